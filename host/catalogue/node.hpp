// A YAML document as a tree that remembers where each key and value stood. What a careless or hostile file may hold
// beyond maps, lists and plain texts (aliases, anchors, tags, duplicate keys, bottomless nesting, huge scalars) never
// gets here: read_node() refuses it.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "host/catalogue/place.hpp"

namespace flutebook::catalogue {

/// Owns its children; copies are deep.
struct Node {
    enum class Kind { text, list, map, empty };
    struct Entry;

    Kind kind = Kind::empty;
    std::string text;      // of a text
    bool quoted = false;   // a quoted text is never a number
    std::vector<Node> items;     // of a list
    std::vector<Entry> entries;  // of a map, in the order of the file
    Place place;

    /// The value under a key of a map; nothing where it is not there.
    [[nodiscard]] const Node* find(const std::string& key) const;
};

struct Node::Entry {
    std::string key;
    Place key_place;
    Node value;
};

}  // namespace flutebook::catalogue
