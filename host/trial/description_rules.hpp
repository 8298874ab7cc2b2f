// The rules of the group `description` that a host can live without, and people cannot.
#pragma once

#include "host/trial/rules.hpp"

namespace flutebook::trial {

[[nodiscard]] Wrong try_documented(Subject& subject);
[[nodiscard]] Wrong try_known_names(Subject& subject);
[[nodiscard]] Wrong try_shedding(Subject& subject);

}  // namespace flutebook::trial
