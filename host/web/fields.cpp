#include "host/web/fields.hpp"

#include <algorithm>

#include "host/base/characters.hpp"

namespace flutebook::web {

namespace {

constexpr std::size_t most_fields = 200, most_segments = 8;

int digit_of(char sign) {
    if (sign >= '0' && sign <= '9') return sign - '0';
    if (sign >= 'a' && sign <= 'f') return sign - 'a' + 10;
    if (sign >= 'A' && sign <= 'F') return sign - 'A' + 10;
    return -1;
}

enum class Plus { space, sign };

std::optional<std::string> percent_decoded(std::string_view text, Plus plus) {
    std::string result;
    for (std::size_t at = 0; at < text.size(); ++at) {
        if (text[at] == '+' && plus == Plus::space) {
            result += ' ';
        } else if (text[at] != '%') {
            result += text[at];
        } else {
            if (at + 2 >= text.size()) return std::nullopt;
            const int high = digit_of(text[at + 1]), low = digit_of(text[at + 2]);
            if (high < 0 || low < 0) return std::nullopt;
            result += static_cast<char>(high * 16 + low);
            at += 2;
        }
    }
    return result;
}

// Every line of it is plain text.
bool are_plain_lines(std::string_view text) {
    for (std::size_t at = 0; at <= text.size();) {
        const std::size_t end = std::min(text.find('\n', at), text.size());
        std::string_view line = text.substr(at, end - at);
        if (!line.empty() && line.back() == '\r') line.remove_suffix(1);
        std::string tabless(line);
        std::replace(tabless.begin(), tabless.end(), '\t', ' ');
        if (!base::is_plain_line(tabless)) return false;
        at = end + 1;
    }
    return true;
}

}  // namespace

const std::string& Fields::at(std::string_view name) const {
    static const std::string nothing;
    for (const auto& [key, value] : fields_)
        if (key == name) return value;
    return nothing;
}

bool Fields::has(std::string_view name) const {
    return std::any_of(fields_.begin(), fields_.end(), [&](const Field& field) { return field.first == name; });
}

std::optional<Fields> read_fields(std::string_view text, Lines lines) {
    std::vector<Fields::Field> fields;
    while (!text.empty()) {
        const std::string_view one = text.substr(0, text.find('&'));
        text.remove_prefix(std::min(one.size() + 1, text.size()));
        if (one.empty()) continue;
        const std::size_t equals = std::min(one.find('='), one.size());
        auto name = percent_decoded(one.substr(0, equals), Plus::space);
        auto value = percent_decoded(one.substr(std::min(equals + 1, one.size())), Plus::space);
        if (!name || !value || !base::is_plain_line(*name) || fields.size() == most_fields) return std::nullopt;
        if (lines == Lines::take ? !are_plain_lines(*value) : !base::is_plain_line(*value)) return std::nullopt;
        fields.emplace_back(std::move(*name), std::move(*value));
    }
    return Fields(std::move(fields));
}

std::optional<Target> read_target(std::string_view target) {
    Target result;
    const std::size_t mark = std::min(target.find('?'), target.size());
    std::string_view path = target.substr(0, mark);
    auto query = read_fields(target.substr(std::min(mark + 1, target.size())), Lines::refuse);
    if (!query || path.empty() || path.front() != '/') return std::nullopt;
    result.query = std::move(*query);
    path.remove_prefix(1);
    while (!path.empty()) {
        const std::size_t end = std::min(path.find('/'), path.size());
        auto segment = percent_decoded(path.substr(0, end), Plus::sign);
        if (!segment || segment->empty() || *segment == "." || *segment == ".." || !base::is_plain_line(*segment) ||
            result.segments.size() == most_segments || end + 1 == path.size())
            return std::nullopt;
        result.segments.push_back(std::move(*segment));
        path.remove_prefix(std::min(end + 1, path.size()));
    }
    return result;
}

}  // namespace flutebook::web
