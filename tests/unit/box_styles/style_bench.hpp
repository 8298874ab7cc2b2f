// Styles read from a text as styles.yaml holds it, and what is complained of.
#pragma once

#include <string>
#include <vector>

#include "host/box_styles/style.hpp"

namespace flutebook::fixture {

/// Reads the text with the library beside it. Fails the test where it is complained of.
[[nodiscard]] std::vector<box_styles::Style> read_styles_text(const std::string& text);

/// What is complained of, one a line, as `line:column: path: text`.
[[nodiscard]] std::vector<std::string> style_complaints(const std::string& text);

/// A slotted half box of one panel row, fit as it stands, for one word to be changed.
[[nodiscard]] std::string tray_text();

/// tray_text() with the one place of `old_text` replaced; fails the test if there is not exactly one.
[[nodiscard]] std::string tray_with(const std::string& old_text, const std::string& new_text);

}  // namespace flutebook::fixture
