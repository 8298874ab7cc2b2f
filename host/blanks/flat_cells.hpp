// The cells of a blank as polygons: each hangs on its parent's edge, as wide as both and the grid allow, and reaches as
// far as it says.
#pragma once

#include <vector>

#include "host/blanks/flat.hpp"
#include "host/blanks/flat_values.hpp"

namespace flutebook::blanks {

/// The cells of a piece where the map has its first column and row at 0; what leaves the grid may lie below. Throws
/// InputError (request) as draw_flat() does. `values` holds all but `w`, `d` and `i`, which this sets.
[[nodiscard]] std::vector<FlatCell> place_cells(const box_styles::StylePiece& piece, StyleValues& values);

/// Twice the area that a polygon holds, above 0 where its corners turn from x to y.
[[nodiscard]] double signed_double_area(const Polygon& polygon);

}  // namespace flutebook::blanks
