// Every number that a model may need in any plant, for one row: the host's facts, and the results of a run. So no other
// plugin is needed to try one.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "host/contract/model.hpp"
#include "host/engine/row.hpp"

namespace flutebook::plugin_check {

/// The results of the run of an order, in kg, m, m2, h and pieces; vectors by step 0 .. K+1 or by ply.
struct RunNumbers {
    std::vector<double> fed, good, scrap_kg, hours;
    std::vector<double> issued_kg;
    double web_length_m = 0, web_area_m2 = 0, adhesive_kg = 0;
};

[[nodiscard]] RunNumbers run_numbers(const engine::Row& row);

/// A name that has a meaning without any plugin.
struct KnownName {
    std::string name, unit;
    contract::Axis axis;
    contract::Range range;
    bool may_be_provided;  // a model may replace it, or is expected to provide it
};

/// Facts first, in the engine's order.
[[nodiscard]] const std::vector<KnownName>& known_names();

/// The values of all known names in a row, in the order of known_names(); each by its axis index.
[[nodiscard]] std::vector<std::vector<double>> known_values(const engine::Row& row);

}  // namespace flutebook::plugin_check
