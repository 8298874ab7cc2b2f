// The rules of the group `description` that a host can live without, and people cannot.
#pragma once

#include "host/plugin_check/rules.hpp"

namespace flutebook::plugin_check {

[[nodiscard]] Wrong try_documented(Subject& subject);
[[nodiscard]] Wrong try_known_names(Subject& subject);
[[nodiscard]] Wrong try_shedding(Subject& subject);

}  // namespace flutebook::plugin_check
