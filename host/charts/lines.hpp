// A line chart of actual and expected values over time, with the quantity that both are shares of as pale bars below.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "host/charts/marks.hpp"

namespace flutebook::charts {

struct LinesPoint {
    std::string label;                       // below the axis: a letter or two
    Mark mark;                               // of everything at this point
    std::optional<double> actual, expected;  // nothing: the lines have a gap
    double quantity = 0;                     // of the bar
};

struct LinesChart {
    std::string title, unit;  // "% of issued paper"
    std::string actual_name, expected_name, quantity_name;
    std::vector<LinesPoint> points;  // the last one is the one that is looked at
};

[[nodiscard]] std::string lines_chart(const LinesChart& values);

}  // namespace flutebook::charts
