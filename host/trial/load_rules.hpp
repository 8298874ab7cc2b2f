// The rules of the groups `load` and `description`: what happens to the process when the file is loaded, and what the
// file says of itself.
#pragma once

#include "host/trial/rules.hpp"

namespace flutebook::trial {

[[nodiscard]] Wrong try_loading(Subject& subject);
[[nodiscard]] Wrong try_loading_floating_point(Subject& subject);
[[nodiscard]] Wrong try_description(Subject& subject);

}  // namespace flutebook::trial
