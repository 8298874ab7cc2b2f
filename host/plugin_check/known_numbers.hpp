// Every number that a model may rely on in any plant, for one row: the facts of the host, and what a run provides by
// its arithmetic. A trial needs no plugin but the one that is tried.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "host/contract/model.hpp"
#include "host/engine/row.hpp"

namespace flutebook::plugin_check {

/// What the run of an order comes to, in kg, m, m2, h and pieces; vectors by step 0 .. K+1 or by ply.
struct RunNumbers {
    std::vector<double> fed, good, scrap_kg, hours;
    std::vector<double> issued_kg;
    double web_length_m = 0, web_area_m2 = 0, adhesive_kg = 0;
};

[[nodiscard]] RunNumbers run_numbers(const engine::Row& row);

/// A name that is known without any plugin: its unit and axis, and its values in a row.
struct KnownName {
    std::string name, unit;
    contract::Axis axis;
    contract::Range range;
    bool may_be_provided;  // a model may take its place, or is expected to give it
};

/// Facts first, in the engine's order.
[[nodiscard]] const std::vector<KnownName>& known_names();

/// Of all known names, in their order; each by its axis index.
[[nodiscard]] std::vector<std::vector<double>> known_values(const engine::Row& row);

}  // namespace flutebook::plugin_check
