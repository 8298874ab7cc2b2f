// What the sums of a style say about the request: whether it has a height, whether it needs a flute's allowances.
#pragma once

#include <string>
#include <vector>

#include "host/plant/styles/style.hpp"

namespace flutebook::plant {

/// Sets uses_height and uses_allowances of a style that was read.
void note_names(Style& style, const std::vector<std::string>& allowance_names);

}  // namespace flutebook::plant
