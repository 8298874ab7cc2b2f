// The tree of a document: look-ups alone. Documents are a few thousand values, so a map is searched from its start.
#include "host/plant/yaml/node.hpp"

namespace flutebook::plant {

namespace {

void add_places(const Node& map, const std::string& prefix, base::Places& places) {
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

base::Places places_of(const Node& map) {
    base::Places places;
    add_places(map, "", places);
    return places;
}

}  // namespace flutebook::plant
