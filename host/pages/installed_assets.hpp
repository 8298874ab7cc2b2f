// The texts of assets/, as CMake put them into the program.
#pragma once

#include <string>
#include <utility>
#include <vector>

namespace flutebook::pages {

/// Each with its name.
[[nodiscard]] std::vector<std::pair<std::string, std::string>> installed_assets();

}  // namespace flutebook::pages
