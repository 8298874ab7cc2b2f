// A report on a page of 100 columns.
#pragma once

#include <string>

#include "host/render/report.hpp"

namespace flutebook::render {

/// Every line ends with a line end, none with a space. Control characters in any text become spaces.
[[nodiscard]] std::string to_text(const Report& report);

}  // namespace flutebook::render
