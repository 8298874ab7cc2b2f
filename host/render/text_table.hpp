// A table as columns that line up, on a page of so many columns.
//
// Columns are as wide as their widest cell, and numbers stand with their points below each other. Where a row would run
// over the page, the heads of the columns are broken into lines; then the first cell of a row runs on over the empty
// cells behind it; where that is not enough, columns of names are cut, the widest first. A number is never cut. A
// sentence stands beside its row, broken into lines where it is long, or below it where too little room is left.
#pragma once

#include <cstddef>
#include <string>

#include "host/render/report.hpp"
#include "host/render/text.hpp"

namespace flutebook::render {

/// Every line ends with a line end, none with a space. Sums stand below a stroke.
[[nodiscard]] std::string table_text(const ReportTable& table, std::size_t width = page_width);

/// A note with its indent.
[[nodiscard]] std::string note_text(const Note& note, std::size_t indent, std::size_t width = page_width);

}  // namespace flutebook::render
