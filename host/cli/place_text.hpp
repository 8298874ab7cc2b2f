// A place in a person's file, as editors take it.
#pragma once

#include <fmt/format.h>

#include <string>

#include "host/catalogue/place.hpp"

namespace flutebook::cli {

/// "machines.yaml:12:40"; a file alone where there is no line.
[[nodiscard]] inline std::string place_text(const catalogue::Place& place) {
    return place.line == 0 ? place.file : fmt::format("{}:{}:{}", place.file, place.line, place.column);
}

}  // namespace flutebook::cli
