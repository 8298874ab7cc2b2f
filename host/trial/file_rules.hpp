// The rules of the group `file`: what the file shows and asks for, before any of it is loaded.
#pragma once

#include "host/trial/rules.hpp"

namespace flutebook::trial {

[[nodiscard]] Wrong try_library(Subject& subject);
[[nodiscard]] Wrong try_exports(Subject& subject);
[[nodiscard]] Wrong try_libraries(Subject& subject);

}  // namespace flutebook::trial
