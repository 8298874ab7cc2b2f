// A blank as it lies flat, seen from the inside of the box: its cells, creases, cuts and slots, with their places.
#pragma once

#include "host/blanks/flat.hpp"
#include "host/drawings/shown_units.hpp"
#include "host/render/drawing.hpp"

namespace flutebook::drawings {

[[nodiscard]] render::Drawing flat_drawing(const ShownUnits& units, const blanks::FlatBlank& blank);

}  // namespace flutebook::drawings
