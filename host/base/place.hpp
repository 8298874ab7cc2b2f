// Where a value stands in a file that a person wrote.
#pragma once

#include <map>
#include <string>

namespace flutebook::base {

/// Lines and columns count from 1, columns in bytes. Line 0: the value is a default, and stands in no file.
struct Place {
    std::string file;
    int line = 0;
    int column = 0;
};

/// "machines.yaml:12:40"; a file alone where there is no line.
[[nodiscard]] inline std::string place_text(const Place& place) {
    if (place.line == 0) return place.file;
    return place.file + ":" + std::to_string(place.line) + ":" + std::to_string(place.column);
}

/// Where each key of one entry was given, by its path within the entry: "setup.sheets". A key that was left out
/// is not there.
using Places = std::map<std::string, Place>;

/// Where a key was given; `otherwise` where it was left out.
[[nodiscard]] inline std::string place_text(const Places& places, const std::string& key, const Place& otherwise) {
    const auto place = places.find(key);
    return place_text(place == places.end() ? otherwise : place->second);
}

/// What is doubtful but stops nothing: where, as place_text() says it, and a sentence.
struct Warning {
    std::string at, text;
};

}  // namespace flutebook::base
