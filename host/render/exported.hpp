// Tables on their way into files that other programs open: what is text and what is a number is told by type, never
// guessed from what a cell looks like.
#pragma once

#include <string>
#include <variant>
#include <vector>

namespace flutebook::render {

/// A text, a number, or nothing.
using Cell = std::variant<std::monostate, std::string, double>;

struct ExportedTable {
    std::string name;                     // no longer than 31 characters
    std::vector<std::string> columns;     // with their units; the first names the rows
    std::vector<std::vector<Cell>> rows;  // the first cell of each is its name
};

/// One line a cell, so that any program can filter it: `month,table,row,column,value`. RFC 4180: texts in quotes, lines
/// end in CR LF. A text that a spreadsheet would take for a formula has an apostrophe before it; numbers never do.
[[nodiscard]] std::string csv_text(const std::string& month, const std::vector<ExportedTable>& tables);

/// A text as one cell of a CSV file.
[[nodiscard]] std::string csv_cell(const std::string& text);

}  // namespace flutebook::render
