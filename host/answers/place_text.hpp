// A place in a person's file, as editors take it.
#pragma once

#include <fmt/format.h>

#include <string>

#include "host/base/place.hpp"

namespace flutebook::answers {

/// "machines.yaml:12:40"; a file alone where there is no line.
[[nodiscard]] inline std::string place_text(const base::Place& place) {
    return place.line == 0 ? place.file : fmt::format("{}:{}:{}", place.file, place.line, place.column);
}

}  // namespace flutebook::answers
