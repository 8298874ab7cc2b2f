// A YAML document as a tree that remembers where each key and value stood. What a careless or hostile file may hold
// beyond maps, lists and plain texts (aliases, anchors, tags, duplicate keys, nesting without end, huge scalars) never
// gets here: parse_document() refuses it.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "host/base/place.hpp"

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

/// Where each value of a map stands, by its path: "setup" and "setup.sheets".
[[nodiscard]] Places places_of(const Node& map);

}  // namespace flutebook::base
