// Text on a page of 100 columns, or of as many as a terminal has, whatever names people gave their papers: measured in
// characters, not bytes, and free of anything that would move a terminal's cursor.
//
// Text is UTF-8; a character takes the columns that Unicode gives it: an ideogram two, a combining accent none.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace flutebook::render {

constexpr std::size_t page_width = 100;

/// Columns that a text takes.
[[nodiscard]] std::size_t width_of(std::string_view text);

/// The text with every control character made a space.
[[nodiscard]] std::string cleaned(std::string_view text);

/// At most `width` columns; what is cut ends in "...".
[[nodiscard]] std::string cut(std::string_view text, std::size_t width);

/// Broken between words into lines of at most `width` columns; a word that is longer has a line of its own.
[[nodiscard]] std::vector<std::string> wrapped(std::string_view text, std::size_t width);

/// Each line with a line end, wrapped to the page: the first behind `first`, the others indented as far.
[[nodiscard]] std::string hanging(std::string_view first, std::string_view text, std::size_t width = page_width);

/// The same with a list, broken only between its items; nothing where there are none.
[[nodiscard]] std::string hanging(std::string_view first, const std::vector<std::string>& items,
                                  std::size_t width = page_width);

/// One line that fills the page, `left` and `right` at its edges; two lines where they do not fit beside each other.
[[nodiscard]] std::string edges(std::string_view left, std::string_view right, std::size_t width = page_width);

/// The whole page wide.
[[nodiscard]] std::string rule(char stroke, std::size_t width = page_width);

}  // namespace flutebook::render
