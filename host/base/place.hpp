// Where a value stands in a file that a person wrote.
#pragma once

#include <string>

#include "host/base/file_name.hpp"

namespace flutebook::base {

/// Lines and columns count from 1, columns in bytes. Line 0: the value is a default, and stands in no file.
struct Place {
    FileName file;
    int line = 0;
    int column = 0;
};

/// "machines.yaml:12:40"; a file alone where there is no line.
[[nodiscard]] inline std::string place_text(const Place& place) {
    if (place.line == 0) return place.file;
    return place.file.text() + ":" + std::to_string(place.line) + ":" + std::to_string(place.column);
}

/// What is doubtful but stops nothing: where, as place_text() says it, and a sentence.
struct Warning {
    std::string at, text;
};

}  // namespace flutebook::base
