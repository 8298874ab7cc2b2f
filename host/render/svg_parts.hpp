// The parts that all SVG drawings share: numbers, texts and names.
#pragma once

#include <string>

namespace flutebook::render {

/// With two places at most, so that the bytes do not depend on the last bits of a sum.
[[nodiscard]] std::string svg_number(double value);

/// Escaped, without control characters.
[[nodiscard]] std::string svg_text(const std::string& text);

}  // namespace flutebook::render
