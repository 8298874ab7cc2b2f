// A blank as it lies flat, seen from the inside of the box: its cells, creases, cuts and slots, with their places.
#pragma once

#include "host/geometry/flat.hpp"
#include "host/render/drawing.hpp"
#include "host/reports/shown_units.hpp"

namespace flutebook::reports {

[[nodiscard]] render::Drawing flat_drawing(const ShownUnits& units, const geometry::FlatBlank& blank);

}  // namespace flutebook::reports
