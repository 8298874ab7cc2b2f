// The functions that try the rules, group by group; rules.cpp gives each rule its name, its sentence and its needs.
#pragma once

#include "host/plugin_check/rules.hpp"

namespace flutebook::plugin_check {

// file: what the file exports and needs, before any of it is loaded
[[nodiscard]] Wrong try_library(Subject& subject);
[[nodiscard]] Wrong try_exports(Subject& subject);
[[nodiscard]] Wrong try_libraries(Subject& subject);

// load: what loading the file does to the process
[[nodiscard]] Wrong try_loading(Subject& subject);
[[nodiscard]] Wrong try_loading_floating_point(Subject& subject);

// description: what the file declares
[[nodiscard]] Wrong try_description(Subject& subject);
[[nodiscard]] Wrong try_documented(Subject& subject);
[[nodiscard]] Wrong try_known_names(Subject& subject);
[[nodiscard]] Wrong try_shedding(Subject& subject);

// evaluate: every call gives valid results that depend on the row alone, and touches nothing but its rows
[[nodiscard]] Wrong try_answers(Subject& subject);
[[nodiscard]] Wrong try_inputs(Subject& subject);
[[nodiscard]] Wrong try_bounds(Subject& subject);
[[nodiscard]] Wrong try_numbers(Subject& subject);
[[nodiscard]] Wrong try_ranges(Subject& subject);
[[nodiscard]] Wrong try_floating_point(Subject& subject);
[[nodiscard]] Wrong try_repeats(Subject& subject);
[[nodiscard]] Wrong try_order(Subject& subject);
[[nodiscard]] Wrong try_blocks(Subject& subject);
[[nodiscard]] Wrong try_threads(Subject& subject);
[[nodiscard]] Wrong try_allocation(Subject& subject);
[[nodiscard]] Wrong try_apart(Subject& subject);

// settings: each can be set to every value of its range and to no other
[[nodiscard]] Wrong try_reading(Subject& subject);
[[nodiscard]] Wrong try_ends(Subject& subject);

// truth: the mass balance, and that every declared input is used
[[nodiscard]] Wrong try_balance(Subject& subject);
[[nodiscard]] Wrong try_use(Subject& subject);

// fuzz: many generated orders. Where the rule is broken, it also reports the least number of orders that shows it.
[[nodiscard]] Wrong try_many_orders(Subject& subject);

}  // namespace flutebook::plugin_check
