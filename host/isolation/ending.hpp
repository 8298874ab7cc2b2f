// How a process in which a model worked came to its end, as it is said of the model.
#pragma once

#include <string>

#include "host/trial/child.hpp"

namespace flutebook::isolation {

/// "crashed (SIGSEGV)", "ended its process with code 0"
[[nodiscard]] std::string ending(const trial::Ended& ended);

}  // namespace flutebook::isolation
