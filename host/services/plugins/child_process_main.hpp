// The program as its own child: work with a plugin in a process apart, where it can do no harm.
#pragma once

#include <optional>

namespace flutebook::services {

/// Where a command line was written by the host for a child of its own: does that work and returns the exit code. To be
/// asked before anything else is done.
[[nodiscard]] std::optional<int> run_inside(int count, const char* const* words);

}  // namespace flutebook::services
