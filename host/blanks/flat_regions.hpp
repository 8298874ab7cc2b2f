// What of a blank's polygons needs more than corners and edges: cut-outs, and cells that lie on one another.
#pragma once

#include "host/blanks/flat.hpp"

namespace flutebook::blanks {

/// Whether the outline crosses and touches itself nowhere, and holds an area.
[[nodiscard]] bool is_simple(const Polygon& outline);

/// Cuts a hole from a cell: one that begins on an edge becomes part of the outline. Answers with what is wrong where it
/// leaves the cell, parts it or overlaps another hole, and null where it was cut.
[[nodiscard]] const char* cut_from(FlatCell& cell, const Polygon& hole);

/// The area, in mm2, that two cells share.
[[nodiscard]] double shared_area(const FlatCell& one, const FlatCell& other);

struct CellBounds {
    Point low, high;
};
[[nodiscard]] CellBounds bounds_of(const Polygon& polygon);

}  // namespace flutebook::blanks
