// A table as columns that line up, on a page of 100 columns.
//
// Columns are as wide as their widest cell, and numbers stand with their points below each other. Where a row would run
// over the page, the first cell of a row runs on over the empty cells behind it; where that is not enough, columns of
// names are cut, the widest first. A number is never cut. A sentence is broken into lines beside its row, or below it
// where too little room is left.
#pragma once

#include <string>

#include "host/render/report.hpp"

namespace flutebook::render {

/// Every line ends with a line end, none with a space. Sums stand below a stroke.
[[nodiscard]] std::string table_text(const ReportTable& table);

/// A note with its indent.
[[nodiscard]] std::string note_text(const Note& note, std::size_t indent);

}  // namespace flutebook::render
