// A report as text for others: Markdown, for pages beside a plugin or in a repository, and CSV, for other programs.
#pragma once

#include <string>

#include "host/render/report.hpp"

namespace flutebook::render {

/// Nothing in a text is taken for a sign of the language.
[[nodiscard]] std::string to_markdown(const Report& report);

/// One line a cell, so that any program can filter it: `month,table,row,column,value`, the first column called after
/// the report's kind. RFC 4180: texts in quotes, lines end in CR LF. Numbers are raw: a share is a fraction of its
/// base. A row below another has that row's name before its own: "early: side-trim". No text is a formula.
[[nodiscard]] std::string to_csv(const Report& report);

}  // namespace flutebook::render
