// A report as Markdown, for pages that stand beside a plugin or in a repository.
#pragma once

#include <string>

#include "host/render/report.hpp"

namespace flutebook::render {

/// Nothing in a text is taken for a sign of the language.
[[nodiscard]] std::string to_markdown(const Report& report);

}  // namespace flutebook::render
