// The tree of a document. Documents are a few thousand values, so a map is searched from its start.
#include "host/base/yaml/node.hpp"

#include <algorithm>
#include <cstddef>
#include <utility>
#include <vector>

namespace flutebook::base {

namespace {

void add_places(const Node& map, const std::string& prefix, std::vector<Places::Entry>& places) {
    for (const auto& entry : map.entries) {
        std::string path = prefix + entry.key;
        if (entry.value.kind == Node::Kind::map) add_places(entry.value, path + ".", places);
        places.emplace_back(std::move(path), entry.value.place);
    }
}

}  // namespace

const Node* Node::find(const std::string& key) const {
    for (const auto& entry : entries)
        if (entry.key == key) return &entry.value;
    return nullptr;
}

Node text_node(std::string text, const Place& place, bool is_quoted) {
    Node node;
    node.kind = Node::Kind::text;
    node.text = std::move(text);
    node.quoted = is_quoted;
    node.place = place;
    return node;
}

void add_entry(Node& map, const std::string& key, Node value) {
    Place place = value.place;
    map.entries.push_back({key, std::move(place), std::move(value)});
}

Node& entry_of(Node& map, const std::string& key, Node::Kind kind, const Place& place) {
    for (Node::Entry& entry : map.entries)
        if (entry.key == key) return entry.value;
    Node value;
    value.kind = kind;
    value.place = place;
    add_entry(map, key, std::move(value));
    return map.entries.back().value;
}

// Sorted first: a file may have a hundred thousand keys, and each that comes before others would move them all.
Places places_of(const Node& map) {
    std::vector<Places::Entry> entries;
    constexpr std::size_t deeper = 8;  // values of the maps within, most often
    entries.reserve(map.entries.size() + deeper);
    add_places(map, "", entries);
    std::stable_sort(entries.begin(), entries.end(),
                     [](const Places::Entry& left, const Places::Entry& right) { return left.first < right.first; });
    Places places;
    places.reserve(entries.size());
    for (Places::Entry& entry : entries) places.insert_or_assign(std::move(entry.first), entry.second);
    return places;
}

}  // namespace flutebook::base
