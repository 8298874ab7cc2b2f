// The trial as the child holds it: the rules one after another, over the file that it was handed.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "host/plugin_check/trial.hpp"

namespace flutebook::plugin_check {

/// The words that a child is started with. It finds where to report as descriptor 3, the file as 4.
[[nodiscard]] std::vector<std::string> words_of(const std::string& file, const CheckOptions& asked);

/// Where the words of the command line are those: holds the trial and returns the exit code. To be called before
/// anything else in a process, which is of no other use afterwards.
[[nodiscard]] std::optional<int> run_trial(int count, const char* const* words);

}  // namespace flutebook::plugin_check
