// The main function of the child process that tries a plugin: the rules one after another, on the file that it
// received.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "host/plugin_check/trial.hpp"

namespace flutebook::plugin_check {

/// The arguments of such a child. Descriptor 3 is its report, 4 is the file.
[[nodiscard]] std::vector<std::string> words_of(const std::string& file, const TrialRequest& options);

/// If the arguments are those of such a child: tries the plugin and ends the process. To be called first in a process.
/// Otherwise returns nothing.
[[nodiscard]] std::optional<int> run_trial(int count, const char* const* words);

}  // namespace flutebook::plugin_check
