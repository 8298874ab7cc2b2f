// The text of one style of the library, cut out of the whole before anything is parsed.
#pragma once

#include <string>

namespace flutebook::box_styles {

/// `text` with every line empty that belongs to another style than `code` and those that it is like, so that lines keep
/// their numbers. Empty where it has no such style. A style begins with its quoted code after two spaces, and says
/// `like: "CODE"` after four: so the library that comes with the program is written, and a test holds it to that.
[[nodiscard]] std::string library_extract(const std::string& text, const std::string& code);

}  // namespace flutebook::box_styles
