// The program as its own child process, in which a plugin is tried or evaluated without harm to the parent.
#pragma once

#include <optional>

namespace flutebook::services {

/// If the arguments are those of a child that the host starts: does its work and returns the exit code. To be called
/// before anything else.
[[nodiscard]] std::optional<int> run_inside(int count, const char* const* words);

}  // namespace flutebook::services
