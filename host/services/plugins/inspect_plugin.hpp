// What a plugin file declares, and whether it keeps the rules. No plant is opened.
#pragma once

#include <cstddef>
#include <cstdint>
#include <functional>
#include <string>
#include <vector>

#include "host/answers/plugin_answer.hpp"
#include "host/contract/model.hpp"

namespace flutebook::services {

/// `begun` hears the name of each rule as it is begun. Throws ModelError where there is no such file, or no process to
/// try it in.
[[nodiscard]] answers::Checked check_plugin(const answers::CheckOptions& asked,
                                            const std::function<void(const std::string&)>& begun);

/// Reads the description that the file holds. A file that was never tried before is first tried in a process apart.
/// Throws ModelError where the file is no plugin, does not pass its trial, or describes itself wrongly.
[[nodiscard]] answers::DescribedModel describe(const std::string& file);

}  // namespace flutebook::services
