// The functions that try the rules, group by group; rules.cpp gives each rule its name, its sentence and its needs.
#pragma once

#include "host/plugin_check/rules.hpp"

namespace flutebook::plugin_check {

// file: what the file exports and needs, before any of it is loaded
[[nodiscard]] Violation try_library(PluginUnderTest& plugin);
[[nodiscard]] Violation try_exports(PluginUnderTest& plugin);
[[nodiscard]] Violation try_libraries(PluginUnderTest& plugin);
[[nodiscard]] Violation try_unique_symbols(PluginUnderTest& plugin);
[[nodiscard]] Violation try_stack(PluginUnderTest& plugin);

// load: what loading the file does to the process
[[nodiscard]] Violation try_loading(PluginUnderTest& plugin);
[[nodiscard]] Violation try_loading_floating_point(PluginUnderTest& plugin);

// description: what the file declares
[[nodiscard]] Violation try_description(PluginUnderTest& plugin);
[[nodiscard]] Violation try_documented(PluginUnderTest& plugin);
[[nodiscard]] Violation try_known_names(PluginUnderTest& plugin);
[[nodiscard]] Violation try_shedding(PluginUnderTest& plugin);

// evaluate: every call gives valid results that depend on the row alone, and touches nothing but its rows
[[nodiscard]] Violation try_answers(PluginUnderTest& plugin);
[[nodiscard]] Violation try_inputs(PluginUnderTest& plugin);
[[nodiscard]] Violation try_bounds(PluginUnderTest& plugin);
[[nodiscard]] Violation try_numbers(PluginUnderTest& plugin);
[[nodiscard]] Violation try_ranges(PluginUnderTest& plugin);
[[nodiscard]] Violation try_floating_point(PluginUnderTest& plugin);
[[nodiscard]] Violation try_repeats(PluginUnderTest& plugin);
[[nodiscard]] Violation try_order(PluginUnderTest& plugin);
[[nodiscard]] Violation try_blocks(PluginUnderTest& plugin);
[[nodiscard]] Violation try_threads(PluginUnderTest& plugin);
[[nodiscard]] Violation try_allocation(PluginUnderTest& plugin);
[[nodiscard]] Violation try_apart(PluginUnderTest& plugin);

// settings: each can be set to every value of its range and to no other
[[nodiscard]] Violation try_reading(PluginUnderTest& plugin);
[[nodiscard]] Violation try_ends(PluginUnderTest& plugin);

// truth: the mass balance, and that every declared input is used
[[nodiscard]] Violation try_balance(PluginUnderTest& plugin);
[[nodiscard]] Violation try_recovery(PluginUnderTest& plugin);
[[nodiscard]] Violation try_rates(PluginUnderTest& plugin);
[[nodiscard]] Violation try_use(PluginUnderTest& plugin);

// fuzz: many generated orders. Where the rule is broken, it also reports the least number of orders that shows it.
[[nodiscard]] Violation try_many_orders(PluginUnderTest& plugin);

// end: what all calls together have done to the process
[[nodiscard]] Violation try_state(PluginUnderTest& plugin);

}  // namespace flutebook::plugin_check
