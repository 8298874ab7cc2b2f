// The plugin files that lie in a plant's folder without being used.
#pragma once

#include <string>
#include <vector>

#include "host/plant/plant.hpp"

namespace flutebook::services {

/// The files of the plant's `plugins` folder that no entry of plugins.yaml loads, sorted; "plugins/varnish.so" of the
/// plant in the working folder, else with the plant's folder before it. No file is opened. Empty where the plant has no
/// such folder, or one that cannot be read.
[[nodiscard]] std::vector<std::string> files_not_listed(const plant::Plant& plant);

}  // namespace flutebook::services
