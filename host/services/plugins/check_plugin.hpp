// The conformance check of a plugin: every rule that the host knows, tried in a process apart. No plant is opened, and
// the file is loaded nowhere else.
#pragma once

#include <cstddef>
#include <cstdint>
#include <functional>
#include <string>
#include <vector>

#include "host/answers/plugin_answer.hpp"

namespace flutebook::services {

/// `begun` hears the name of each rule as it is begun. Throws ModelError where there is no such file, or no process to
/// try it in.
[[nodiscard]] answers::Checked check_plugin(const answers::CheckOptions& asked,
                                            const std::function<void(const std::string&)>& begun);

}  // namespace flutebook::services
