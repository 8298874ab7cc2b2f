// One bar made of parts that add up to a whole. Parts below a hundredth of it are one part, "n others".
#pragma once

#include <string>
#include <vector>

#include "host/charts/marks.hpp"

namespace flutebook::charts {

struct StackedPart {
    std::string label;
    Mark mark;
    double value;       // a part that is not above zero is left out: it is told beside the bar
    std::string cause;  // of loss, whose hatch it has; empty: board
};

struct StackedBar {
    std::string title;
    std::vector<StackedPart> parts;
    std::string others_link;  // of the parts that are one
};

/// `prefix` begins each hatch's id.
[[nodiscard]] std::string stacked_bar(const StackedBar& values, const std::string& prefix);

}  // namespace flutebook::charts
