// The order in which faces in space are painted, so that what is nearer covers what is farther.
#pragma once

#include <cstddef>
#include <vector>

#include "host/blanks/fold.hpp"

namespace flutebook::drawings {

/// Where the reader stands: directions of length 1, square to one another. `nearer` points to the reader.
struct View {
    blanks::Vec3 right, down, nearer;
};

struct PaintedFace {
    blanks::FoldedFace face;
    std::size_t turn;  // in which it is folded: of two faces on one plane the later is outside
};

/// Indices of `faces`, the farthest first. Faces nearer to one another than `thickness_mm` lie on one another.
[[nodiscard]] std::vector<std::size_t> painting_order(const std::vector<PaintedFace>& faces, const View& view,
                                                      double thickness_mm);

}  // namespace flutebook::drawings
