// How a process in which a model worked came to its end, as it is said of the model.
#pragma once

#include <string>

#include "host/sandbox/child.hpp"

namespace flutebook::sandbox {

/// "crashed (SIGSEGV)", "ended its process with code 0"
[[nodiscard]] std::string ending(const Ended& ended);

/// "SIGSEGV"
[[nodiscard]] std::string signal_name(int signal);

}  // namespace flutebook::sandbox
