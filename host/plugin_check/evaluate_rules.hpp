// The rules of the group `evaluate`: what any call of a model must be like, and that nothing decides its results but
// the row itself. And the balance of mass, which every row must keep.
#pragma once

#include "host/plugin_check/rules.hpp"

namespace flutebook::plugin_check {

[[nodiscard]] Wrong try_answers(Subject& subject);
[[nodiscard]] Wrong try_numbers(Subject& subject);
[[nodiscard]] Wrong try_ranges(Subject& subject);
[[nodiscard]] Wrong try_balance(Subject& subject);
[[nodiscard]] Wrong try_floating_point(Subject& subject);
[[nodiscard]] Wrong try_repeats(Subject& subject);
[[nodiscard]] Wrong try_order(Subject& subject);
[[nodiscard]] Wrong try_blocks(Subject& subject);
[[nodiscard]] Wrong try_threads(Subject& subject);

}  // namespace flutebook::plugin_check
