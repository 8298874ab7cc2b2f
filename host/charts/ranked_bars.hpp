// Bars on one scale, each a picture of its own that stands in the row of a table, so that the row is its label.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "host/charts/marks.hpp"

namespace flutebook::charts {

struct RankedBar {
    Mark mark;
    double value;
    std::optional<double> expected;  // a tick
    std::string cause;               // of loss, whose hatch it has; empty: plain, by whether it is above or below 0
};

/// As `bars`. Below zero goes to the left of a line that all have. `prefix` begins each hatch's id.
[[nodiscard]] std::vector<std::string> ranked_bars(const std::vector<RankedBar>& bars, const std::string& prefix);

}  // namespace flutebook::charts
