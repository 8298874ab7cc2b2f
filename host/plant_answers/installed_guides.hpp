// The texts of config/guide, as CMake put them into the program.
#pragma once

#include <string>
#include <utility>
#include <vector>

namespace flutebook::plant_answers {

/// Each with its name.
[[nodiscard]] std::vector<std::pair<std::string, std::string>> installed_guides();

}  // namespace flutebook::plant_answers
