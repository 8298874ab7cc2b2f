// What follows from a blank's polygons: net area, cut and crease, the joint, what is printed, where it is scored.
#pragma once

#include <vector>

#include "host/blanks/flat.hpp"

namespace flutebook::blanks {

/// Where a blank is creased, each place once, rising.
struct Scores {
    std::vector<double> along_mm;   // from its left edge: made by a converter
    std::vector<double> across_mm;  // from its upper edge, across the web: made by the corrugator
};

struct FlatMeasures {
    double area_mm2;  // outlines less holes
    double cut_mm;    // every edge that is no crease, one between two cells once
    double crease_mm;
    double joint_mm;        // creases of the cells that are joined on others
    double print_area_mm2;  // without cells that are joined or plain
    Scores scores;
};

[[nodiscard]] FlatMeasures measure(const FlatBlank& blank);

}  // namespace flutebook::blanks
