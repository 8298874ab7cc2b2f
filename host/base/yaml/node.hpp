// A YAML document as a tree that remembers where each key and value stood. What a careless or hostile file may hold
// beyond maps, lists and plain texts (aliases, anchors, tags, duplicate keys, nesting without end, huge scalars) never
// gets here: parse_document() refuses it.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "host/base/places.hpp"

namespace flutebook::base {

/// Owns its children; copies are deep.
struct Node {
    /// `refused`: something stood here that has been reported already, and says nothing more.
    enum class Kind { text, list, map, empty, refused };
    struct Entry;

    Kind kind = Kind::empty;
    std::string text;            // of a text; it holds no control character
    bool quoted = false;         // a quoted text is never a bare number
    std::vector<Node> items;     // of a list
    std::vector<Entry> entries;  // of a map, in the order of the file
    Place place;                 // of an empty value: its key's

    /// The value under a key of a map; null where it is not there. Lives as long as this node is not changed.
    [[nodiscard]] const Node* find(const std::string& key) const;
};

struct Node::Entry {
    std::string key;
    Place key_place;
    Node value;
};

/// A text that stands at a place. Trees are made of these where something else than a file is read.
[[nodiscard]] Node text_node(std::string text, const Place& place, bool is_quoted = false);

/// Adds an entry to a map; its key stands where its value does.
void add_entry(Node& map, const std::string& key, Node value);

/// The value under a key of a map, which is made there, empty and of this kind, where the map has none. Lives until the
/// map is changed.
[[nodiscard]] Node& entry_of(Node& map, const std::string& key, Node::Kind kind, const Place& place);

/// Where each value of a map stands, by its path: "setup" and "setup.sheets".
[[nodiscard]] Places places_of(const Node& map);

}  // namespace flutebook::base
