// The rules of the group `evaluate` about what a call touches: its rows, and nothing else.
#pragma once

#include "host/trial/rules.hpp"

namespace flutebook::trial {

[[nodiscard]] Wrong try_inputs(Subject& subject);
[[nodiscard]] Wrong try_bounds(Subject& subject);
[[nodiscard]] Wrong try_allocation(Subject& subject);
[[nodiscard]] Wrong try_apart(Subject& subject);

}  // namespace flutebook::trial
