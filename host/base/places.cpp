#include "host/base/places.hpp"

#include <algorithm>

namespace flutebook::base {

namespace {

bool is_before(const Places::Entry& entry, const std::string& path) {
    return entry.first < path;
}

}  // namespace

Places::Iterator Places::find(const std::string& path) const {
    const auto found = std::lower_bound(begin(), end(), path, is_before);
    return found != end() && found->first == path ? found : end();
}

void Places::insert_or_assign(std::string path, const Place& place) {
    const auto at = std::lower_bound(entries_.begin(), entries_.end(), path, is_before);
    if (at != entries_.end() && at->first == path)
        at->second = place;
    else
        entries_.emplace(at, std::move(path), place);
}

std::string place_text(const Places& places, const std::string& key, const Place& otherwise) {
    const auto place = places.find(key);
    return place_text(place == places.end() ? otherwise : place->second);
}

}  // namespace flutebook::base
