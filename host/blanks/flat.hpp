// A style at a size: the cells of a blank as polygons, the creases between them, and how they fold. The blank's
// figures, its drawing and the proof by folding are all taken from this.
//
// Lengths in mm. x runs along the web, left to right; y across it with the flutes, top to bottom, as the style is
// drawn, seen from the inside of the box. The extent of a blank begins at (0, 0).
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "host/plant/plant.hpp"

namespace flutebook::blanks {

struct Point {
    double x, y;
};
/// Corners in turn; the last joins the first.
using Polygon = std::vector<Point>;

struct Segment {
    Point from, to;
};

struct FlatCell {
    std::string name;
    Polygon outline;
    std::vector<Polygon> holes;
    std::optional<std::size_t> parent;  // nothing: the cell that stays
    Segment hinge;                      // on the parent's edge, in the direction of u; nothing to read where no parent
    double angle_deg;                   // folded by this; positive rises towards the reader
    bool is_plain, is_joined;
};

/// One piece of a style at a size.
struct FlatBlank {
    std::string piece;  // empty: the style is one piece
    double count;       // of this blank to one box
    double length_mm, width_mm, caliper_mm;
    std::vector<FlatCell> cells;                 // a parent before its children
    std::vector<Segment> creases, slots;         // of every border in the map
    std::vector<std::vector<std::size_t>> fold;  // cells by step
    std::vector<box_styles::Join> joins;
    std::array<std::optional<box_styles::InsideSpan>, 3> inside;  // L, B, H
    std::array<double, 3> size_mm;                                // what they must come to
    std::array<double, 6> cover;                                  // left right front back bottom top
    std::optional<std::size_t> over;                              // the piece that goes into this one
    std::array<std::optional<double>, 3> walls_mm;                // outside less inside, where the style says so
};

/// What a style is drawn to.
struct StyleSize {
    std::array<double, 3> inside_mm;  // L, B, H
    double caliper_mm;
    const plant::Allowance* allowance;                     // null: the board has none
    std::vector<std::pair<std::string, double>> measures;  // given by the request
    bool is_turned = false;                                // a quarter: what lay along the flutes lies along the web
    std::string where = {};                                // what a refusal begins with: "R-1.yaml:4:9: inside"
};

/// Every piece of the style. Throws InputError (request), naming style and place, where the size leaves no blank: a
/// length below the shortest, a slot that eats its cell, a cut-out that leaves it, cells on one another, a measure
/// outside its range, a requirement that does not hold, an allowance that the board lacks.
[[nodiscard]] std::vector<FlatBlank> draw_flat(const box_styles::Style& style, const StyleSize& size);

}  // namespace flutebook::blanks
