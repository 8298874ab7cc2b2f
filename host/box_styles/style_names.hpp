// What the sums of a style say about the request: whether it has a height, whether it needs a flute's allowances.
#pragma once

#include <string>
#include <vector>

#include "host/box_styles/style.hpp"

namespace flutebook::box_styles {

/// Sets uses_height and uses_allowances of a style that was read.
void note_names(Style& style, const std::vector<std::string>& allowance_names);

}  // namespace flutebook::box_styles
