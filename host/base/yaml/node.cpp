// The tree of a document: look-ups alone. Documents are a few thousand values, so a map is searched from its start.
#include "host/base/yaml/node.hpp"

namespace flutebook::base {

namespace {

void add_places(const Node& map, const std::string& prefix, Places& places) {
    for (const auto& entry : map.entries) {
        const auto path = prefix + entry.key;
        places[path] = entry.value.place;
        if (entry.value.kind == Node::Kind::map) add_places(entry.value, path + ".", places);
    }
}

}  // namespace

const Node* Node::find(const std::string& key) const {
    for (const auto& entry : entries)
        if (entry.key == key) return &entry.value;
    return nullptr;
}

Places places_of(const Node& map) {
    Places places;
    add_places(map, "", places);
    return places;
}

}  // namespace flutebook::base
