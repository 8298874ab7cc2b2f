#include "host/scenario/number_leaves.hpp"

#include <fmt/format.h>

#include <optional>

namespace flutebook::scenario {

namespace {

using base::Node;

constexpr const char* day_key = "from";

std::string below(const std::string& path, const std::string& key) {
    return path.empty() ? key : path + "." + key;
}

// A quoted text is no bare number.
std::optional<WrittenNumber> number_of(const Node& node) {
    if (node.kind != Node::Kind::text) return std::nullopt;
    auto number = written_number(node.text);
    return number && node.quoted && number->unit.empty() ? std::nullopt : number;
}

void add_leaves_below(Node& node, const std::string& path, std::vector<NumberLeaf>& leaves) {
    if (auto number = number_of(node)) leaves.push_back({path, &node, std::move(*number)});
    for (Node::Entry& entry : node.entries)
        if (entry.key != day_key) add_leaves_below(entry.value, below(path, entry.key), leaves);
    for (std::size_t i = 0; i < node.items.size(); ++i)
        add_leaves_below(node.items[i], path + names_of_item(node.items[i], i).front(), leaves);
}

// A model is the only key of its entry in a list.
bool is_listed_model(const Node& item) {
    return item.kind == Node::Kind::map && item.entries.size() == 1;
}

}  // namespace

std::vector<NumberLeaf> number_leaves(Node& node, const std::string& path) {
    std::vector<NumberLeaf> result;
    add_leaves_below(node, path, result);
    return result;
}

std::vector<std::string> names_of_item(const Node& item, std::size_t index) {
    const std::string by_number = fmt::format("[{}]", index + 1);
    const Node* day = item.find(day_key);
    if (day == nullptr || day->kind != Node::Kind::text) return {by_number};
    return {fmt::format("[{}]", day->text), by_number};
}

void add_paths(const Node& node, const std::string& path, std::map<std::string, std::string>& by_place) {
    by_place.emplace(base::place_text(node.place), path);
    for (const Node::Entry& entry : node.entries) {
        add_paths(entry.value, below(path, entry.key), by_place);
        by_place.emplace(base::place_text(entry.key_place), below(path, entry.key));
    }
    for (std::size_t i = 0; i < node.items.size(); ++i)
        add_paths(node.items[i], is_listed_model(node.items[i]) ? path : path + names_of_item(node.items[i], i).front(),
                  by_place);
}

}  // namespace flutebook::scenario
