// The rules of the group `file`: what the file shows and asks for, before any of it is loaded.
#pragma once

#include "host/plugin_check/rules.hpp"

namespace flutebook::plugin_check {

[[nodiscard]] Wrong try_library(Subject& subject);
[[nodiscard]] Wrong try_exports(Subject& subject);
[[nodiscard]] Wrong try_libraries(Subject& subject);

}  // namespace flutebook::plugin_check
