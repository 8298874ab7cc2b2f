// The box that a folded blank encloses: where its walls stand along L, B and H, how many layers each has, how large the
// inside is.
//
// Cells are planes; the thickness of the board counts in distances: half of it on either side of a plane, and a whole
// one for each cell that lies on another. Which of two cells on one plane lies outside does not matter to the sizes.
// All layers pushed in: the outermost stays where it is drawn and each further one lies a thickness inside of it. All
// layers pushed out: the innermost stays.
#pragma once

#include <array>
#include <optional>
#include <vector>

#include "host/blanks/fold.hpp"
#include "host/blanks/plane_region.hpp"

namespace flutebook::blanks {

/// A cell that stands further in than this many thicknesses is no layer of a wall but stands in the inside.
constexpr double layer_depth_calipers = 1.3;

/// How far beyond the drawn wall a layer may still stand.
inline double outer_reach_mm(double caliper_mm) {
    return 4 * caliper_mm + 1;
}

/// A blank after all or some of its steps. `blank` must outlive it.
struct FoldedBlank {
    const FlatBlank* blank;
    std::vector<Region> regions;  // of each cell, flat
    std::vector<Placement> placements;

    [[nodiscard]] bool are_parallel(std::size_t a, std::size_t b) const;
    /// Cell `other` in the frame of `cell`.
    [[nodiscard]] Region seen_from(std::size_t cell, std::size_t other) const;
};

[[nodiscard]] FoldedBlank folded(const FlatBlank& blank, double steps_done);

/// A side as it is drawn: a direction, and where the first and the second wall stand along it.
struct DrawnSide {
    Vec3 direction;
    double from_mm, to_mm;
};

/// L, B and H; a side that is not measured is as long as all cells reach.
using DrawnBox = std::array<DrawnSide, 3>;

/// One end of a side of the box. Of its layers only those count that reach before the inside: the edge of a wall that
/// is rolled over lies beside it.
struct BoxEnd {
    double at_mm;                                 // of the drawn wall, along the axis
    std::optional<std::size_t> wall;              // the cell measured from; nothing: the rim
    double innermost_in_mm, innermost_out_mm;     // of the layers, inwards of the drawn wall, pushed in and out
    double outermost_mm;                          // inwards of the drawn wall: not above 0
    double thickness_mm, thickness_less_tabs_mm;  // of the layers, pressed
};

struct InsideRange {
    double pushed_in_mm, pushed_out_mm;
};

struct BoxAxis {
    Vec3 direction;  // from the first cell of `inside` to the second
    BoxEnd from, to;
    bool is_parallel;  // both cells stand square to it

    [[nodiscard]] InsideRange inside(double caliper_mm) const;
    /// Over the outermost layers, pushed in.
    [[nodiscard]] double outside_mm(double caliper_mm) const;
};

/// The extent of all cells along a direction: the least and the greatest.
[[nodiscard]] std::array<double, 2> extent_along(const FoldedBlank& folded, const Vec3& direction);

/// L, B, H, where the style says how each is measured.
using BoxAxes = std::array<std::optional<BoxAxis>, 3>;
[[nodiscard]] BoxAxes box_axes(const FoldedBlank& folded);

[[nodiscard]] bool are_square(const BoxAxes& axes);

/// Nothing where fewer than two sides are measured, or they are not square to one another.
[[nodiscard]] std::optional<DrawnBox> drawn_box(const FoldedBlank& folded, const BoxAxes& axes);

/// The inside edge of the faces that stand square to `side`, in the frame of the wall.
[[nodiscard]] Rectangle face_frame(const FoldedBlank& folded, std::size_t wall, const DrawnBox& box, std::size_t side);

/// Outside less inside with all layers pressed. A joined tab counts as far as the drawing leaves it room beside `size`.
[[nodiscard]] double walls_mm(const BoxAxis& axis, double size_mm, double caliper_mm);

/// Cells that stand square to `side` near a place along it, with their regions in the frame of `wall`. `inwards` is 1
/// where the side begins and -1 where it ends.
struct WallLayer {
    std::size_t cell;
    double depth_mm;  // inwards of the drawn wall
    Region region;
};
[[nodiscard]] std::vector<WallLayer> layers_at(const FoldedBlank& folded, std::size_t wall, const DrawnSide& side,
                                               double at_mm, double inwards);

}  // namespace flutebook::blanks
