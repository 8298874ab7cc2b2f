// A report on a page of 100 columns, or of as many as a terminal has.
#pragma once

#include <cstddef>
#include <string>

#include "host/render/report.hpp"
#include "host/render/text.hpp"

namespace flutebook::render {

/// Every line ends with a line end, none with a space. Control characters in any text become spaces.
[[nodiscard]] std::string to_text(const Report& report, std::size_t width = page_width);

}  // namespace flutebook::render
