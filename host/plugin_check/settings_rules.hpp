// The rules of the group `settings`: the ends of what a person may set.
//
// That nothing beyond the ends reaches a model is the host's own doing. It is tried all the same, through the very
// reading that a plant's files go through, so that a declaration which that reading cannot guard is found.
#pragma once

#include "host/plugin_check/rules.hpp"

namespace flutebook::plugin_check {

[[nodiscard]] Wrong try_reading(Subject& subject);
[[nodiscard]] Wrong try_ends(Subject& subject);

}  // namespace flutebook::plugin_check
