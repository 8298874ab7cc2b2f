#include "host/services/quoting/differences.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <unordered_map>
#include <utility>

namespace flutebook::services {

namespace {

using plant::Node;

std::optional<double> number_in(const std::string& text) {
    double result = 0;
    const char* past = text.data() + text.size();
    const auto read = std::from_chars(text.data(), past, result);
    if (read.ec != std::errc{} || read.ptr != past) return std::nullopt;
    return result;
}

std::string under(const std::string& path, const std::string& key) {
    return path.empty() ? key : path + "." + key;
}

// As people write it in one line; nothing where it holds more than plain values.
std::optional<std::string> in_one_line(const Node& node) {
    if (node.kind == Node::Kind::text) return node.text;
    if (node.kind != Node::Kind::list) return std::string();
    std::vector<std::string> texts;
    for (const Node& item : node.items) {
        if (item.kind != Node::Kind::text) return std::nullopt;
        texts.push_back(item.text);
    }
    return fmt::format("[{}]", fmt::join(texts, ", "));
}

std::string name_of_item(const Node& item, std::size_t index) {
    const Node* from = item.find("from");
    if (from != nullptr && from->kind == Node::Kind::text) return from->text;
    return std::to_string(index + 1);
}

void add_leaves(const Node& node, const std::string& path, std::vector<answers::Leaf>& leaves);

void add_map(const Node& node, const std::string& path, std::vector<answers::Leaf>& leaves) {
    for (const Node::Entry& entry : node.entries) add_leaves(entry.value, under(path, entry.key), leaves);
    // That it is there says something too: a model without settings is loaded.
    if (node.entries.empty()) leaves.push_back({path, "{}", std::nullopt, node.place});
}

void add_list(const Node& node, const std::string& path, std::vector<answers::Leaf>& leaves) {
    for (std::size_t i = 0; i < node.items.size(); ++i) {
        const Node& child = node.items[i];
        if (child.kind == Node::Kind::map && child.entries.size() == 1)
            add_map(child, path, leaves);
        else
            add_leaves(child, fmt::format("{}[{}]", path, name_of_item(child, i)), leaves);
    }
}

void add_leaves(const Node& node, const std::string& path, std::vector<answers::Leaf>& leaves) {
    if (node.kind == Node::Kind::map) {
        add_map(node, path, leaves);
    } else if (const auto text = in_one_line(node)) {
        leaves.push_back({path, *text, number_in(*text), node.place});
    } else {
        add_list(node, path, leaves);
    }
}

std::unordered_map<std::string, const answers::Leaf*> by_path(const std::vector<answers::Leaf>& leaves) {
    std::unordered_map<std::string, const answers::Leaf*> result;
    for (const answers::Leaf& leaf : leaves) result.emplace(leaf.path, &leaf);
    return result;
}

}  // namespace

std::vector<answers::Leaf> leaves_of(const Node& root) {
    std::vector<answers::Leaf> result;
    add_leaves(root, "", result);
    return result;
}

std::vector<answers::Difference> differences(const std::vector<answers::Leaf>& was,
                                             const std::vector<answers::Leaf>& now) {
    const auto then = by_path(was);
    const auto today = by_path(now);
    std::vector<answers::Difference> result;
    for (const answers::Leaf& leaf : now) {
        const auto before = then.find(leaf.path);
        if (before == then.end())
            result.push_back({leaf.path, std::nullopt, leaf});
        else if (before->second->text != leaf.text)
            result.push_back({leaf.path, *before->second, leaf});
    }
    for (const answers::Leaf& leaf : was)
        if (today.count(leaf.path) == 0) result.push_back({leaf.path, leaf, std::nullopt});
    return result;
}

}  // namespace flutebook::services
