// The rules of the group `evaluate` about what a call touches: its rows, and nothing else.
#pragma once

#include "host/plugin_check/rules.hpp"

namespace flutebook::plugin_check {

[[nodiscard]] Wrong try_inputs(Subject& subject);
[[nodiscard]] Wrong try_bounds(Subject& subject);
[[nodiscard]] Wrong try_allocation(Subject& subject);
[[nodiscard]] Wrong try_apart(Subject& subject);

}  // namespace flutebook::plugin_check
