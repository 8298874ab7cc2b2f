// One example of each form of chart, with all that a form has: what is compared with the pictures in golden/.
#pragma once

#include <map>
#include <string>

#include "host/charts/lines.hpp"
#include "host/charts/ranked_bars.hpp"
#include "host/charts/stacked_bar.hpp"
#include "host/charts/staged_flow.hpp"
#include "host/charts/waterfall.hpp"

namespace flutebook::charts {

[[nodiscard]] Waterfall example_fall();
[[nodiscard]] LinesChart example_lines();
/// A plant with two small machines beside a large one.
[[nodiscard]] StagedFlow example_flow();

/// Each of the five forms drawn, by its name.
[[nodiscard]] std::map<std::string, std::string> drawn_forms();
/// All of them.
[[nodiscard]] std::string all_forms();

}  // namespace flutebook::charts
