// Escapes text for HTML, XML, Markdown and CSV, so that none of it is read as part of that language. Every function
// takes any bytes.
#pragma once

#include <string>
#include <string_view>

namespace flutebook::render {

/// Between tags or double quotes of HTML and XML. What is no character there, or no UTF-8, becomes a question mark.
[[nodiscard]] std::string markup_text(std::string_view text);

/// In a paragraph or a table of Markdown, on one line.
[[nodiscard]] std::string markdown_text(std::string_view text);
/// Between backticks; in a table too.
[[nodiscard]] std::string markdown_code(std::string_view text);

/// One cell of CSV (RFC 4180), in quotes. A text that a spreadsheet would calculate has an apostrophe before it.
[[nodiscard]] std::string csv_cell(std::string_view text);

}  // namespace flutebook::render
