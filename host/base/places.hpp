// Where each key of one entry was given.
#pragma once

#include <cstddef>
#include <string>
#include <utility>
#include <vector>

#include "host/base/place.hpp"

namespace flutebook::base {

/// By a key's path within the entry: "setup.sheets". A key that was left out is not there. In one piece of memory,
/// since every request that is read has one.
class Places {
public:
    using Entry = std::pair<std::string, Place>;
    using Iterator = std::vector<Entry>::const_iterator;

    /// In the order of the paths.
    [[nodiscard]] Iterator begin() const { return entries_.begin(); }
    [[nodiscard]] Iterator end() const { return entries_.end(); }
    /// end() where it was left out.
    [[nodiscard]] Iterator find(const std::string& path) const;

    void insert_or_assign(std::string path, const Place& place);
    void reserve(std::size_t paths) { entries_.reserve(paths); }

private:
    std::vector<Entry> entries_;
};

/// Where a key was given; `otherwise` where it was left out.
[[nodiscard]] std::string place_text(const Places& places, const std::string& key, const Place& otherwise);

}  // namespace flutebook::base
