// A text in CommonMark as a part of a page.
#pragma once

#include <string>

#include "host/pages/markup.hpp"

namespace flutebook::pages {

/// Markup within the text is shown, never taken. A link into a repository becomes its words with the file's name, since
/// the page it stands on serves no such file.
[[nodiscard]] Html markdown_html(const std::string& text);

}  // namespace flutebook::pages
