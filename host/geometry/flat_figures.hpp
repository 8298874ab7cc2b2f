// The figures of a blank that follow from its cells: areas, lengths of cut and crease, the joint, the places of scores.
#pragma once

#include <vector>

#include "host/geometry/flat.hpp"

namespace flutebook::geometry {

struct FlatFigures {
    double area_m2;        // of all cells, less their holes
    double print_area_m2;  // less what is joined or not printed
    double cut_mm;         // borders that are no crease; a cut between two cells counts once
    double crease_mm;
    double joint_mm;                          // creases of the joined cells; 0 where none is
    std::vector<double> along_mm, across_mm;  // distinct places of creases across and along the blank, rising
};

[[nodiscard]] FlatFigures figures_of(const FlatBlank& blank);

/// By the corners' cross products; exact where all corners stand on halves of a mm.
[[nodiscard]] double area_of(const Polygon& polygon);

/// A share of an edge, from 0 to 1 along it.
struct EdgeShare {
    double from, to;
};

/// The share of `edge` that `other` lies on; from = to where it lies on none of it.
[[nodiscard]] EdgeShare share_covered(const Segment& edge, const Segment& other);

/// The sides of a polygon that are longer than nothing.
[[nodiscard]] std::vector<Segment> edges_of(const Polygon& polygon);

[[nodiscard]] double length_of(const Segment& segment);

/// Two places less than this apart are one.
constexpr double same_place_mm = 0.01;

}  // namespace flutebook::geometry
