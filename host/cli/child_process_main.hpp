// Command lines that no person writes: the host's own, for its child processes.
#pragma once

#include <optional>

#include "host/services/plugins/child_process_main.hpp"

namespace flutebook::cli {

/// The exit code, where it was one of those.
[[nodiscard]] inline std::optional<int> run_inside(int count, const char* const* words) {
    return services::run_inside(count, words);
}

}  // namespace flutebook::cli
