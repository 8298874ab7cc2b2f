// A plugin's own account of itself, from its file alone: no plant is opened, and none of its models is evaluated.
#pragma once

#include <string>
#include <vector>

#include "host/answers/plugin_answer.hpp"
#include "host/contract/model.hpp"

namespace flutebook::services {

/// Reads the description that the file holds. A file that was never tried before is first tried in a process apart.
/// Throws ModelError where the file is no plugin, does not pass its trial, or describes itself wrongly.
[[nodiscard]] answers::DescribedModel describe(const std::string& file);

}  // namespace flutebook::services
