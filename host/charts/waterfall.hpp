// A waterfall chart: from one amount to another, each step beginning where the one before it ended.
#pragma once

#include <string>
#include <vector>

#include "host/charts/marks.hpp"

namespace flutebook::charts {

struct WaterfallStep {
    enum class Kind { level, change };
    std::string label, figure;  // below it, and above it: "+12.50"
    Mark mark;
    double value;  // of a level the level itself, of a change the difference
    Kind kind;
};

struct Waterfall {
    std::string title;
    std::vector<WaterfallStep> steps;  // the first is a level
};

[[nodiscard]] std::string waterfall(const Waterfall& values);

}  // namespace flutebook::charts
