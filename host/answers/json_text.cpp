#include "host/answers/json_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cassert>
#include <cmath>
#include <cstddef>
#include <nlohmann/json.hpp>
#include <string_view>

namespace flutebook::answers {

namespace {

// How the text of a tree ends whose last member is an empty list.
constexpr std::string_view empty_end = "]\n}\n";

std::string of_plain(const Json& value) {
    if (value.is_number_float()) {
        const double number = value.get<double>();
        return std::isfinite(number) ? fmt::format("{}", number) : "null";
    }
    return value.dump(-1, ' ', false, Json::error_handler_t::replace);
}

bool is_flat(const Json& value) {
    return std::none_of(value.begin(), value.end(), [](const Json& json) { return json.is_structured(); });
}

// The text before, between and after the members of a container.
struct Spacing {
    std::string open, between, close;
};

Spacing spacing(const Json& container, std::size_t depth) {
    if (is_flat(container)) return {"", ", ", ""};
    return {fmt::format("\n{:{}}", "", 2 * depth + 2), fmt::format(",\n{:{}}", "", 2 * depth + 2),
            fmt::format("\n{:{}}", "", 2 * depth)};
}

void write(std::string& out, const Json& value, std::size_t depth) {
    if (!value.is_structured()) {
        out += of_plain(value);
        return;
    }
    const Spacing space = spacing(value, depth);
    out += value.is_object() ? "{" : "[";
    bool is_first = true;
    for (const auto& member : value.items()) {
        out += is_first ? space.open : space.between;
        is_first = false;
        if (value.is_object()) out += of_plain(Json(member.key())) + ": ";
        write(out, member.value(), depth + 1);
    }
    out += space.close + (value.is_object() ? "}" : "]");
}

}  // namespace

Json amount_json(Money amount) {
    return amount.to_double();
}

Json document(const char* name, const Json& tree) {
    Json result = {{"answer", name}, {"answer_version", document_version}};
    result.update(tree);
    return result;
}

std::string document_text(const char* name, const Json& tree) {
    return json_text(document(name, tree));
}

std::string json_text(const Json& tree) {
    std::string result;
    write(result, tree, 0);
    return result + "\n";
}

JsonListStream::JsonListStream(const Json& head) : begin_(json_text(head)) {
    assert(begin_.ends_with(empty_end) && "the last member is an empty list");
    begin_.resize(begin_.size() - empty_end.size());
}

std::string JsonListStream::add(const Json& item) {
    std::string result = is_empty_ ? "\n    " : ",\n    ";
    is_empty_ = false;
    write(result, item, 2);
    return result;
}

std::string JsonListStream::end() const {
    return std::string(is_empty_ ? "" : "\n  ") + std::string(empty_end);
}

}  // namespace flutebook::answers
