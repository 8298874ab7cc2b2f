// Edges that two cells of a blank share: a crease, or one cut that parts both.
#pragma once

#include <vector>

#include "host/blanks/flat.hpp"

namespace flutebook::blanks {

[[nodiscard]] double length_of(const Segment& segment);
/// Of an outline: the sum of its edges.
[[nodiscard]] double length_around(const Polygon& polygon);

/// Where edges of one cell lie on edges of the other.
[[nodiscard]] std::vector<Segment> shared_edges(const FlatCell& one, const FlatCell& other);

/// The parts of a cell's crease that both it and its parent have; all of it but for cut-outs that begin on it.
[[nodiscard]] std::vector<Segment> crease_of(const FlatCell& cell, const FlatCell& parent);

}  // namespace flutebook::blanks
