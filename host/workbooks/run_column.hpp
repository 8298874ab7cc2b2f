// One column of the sheet "Run": the arithmetic of flutebook/run.hpp as a spreadsheet's formulas.
//
// A number is a formula where the formula makes, of the cells that it names, what the quote's own models made; where
// another model of the plant made it otherwise, it is a value. So no column shows a figure that the quote has not.
#pragma once

#include <map>
#include <string>
#include <tuple>
#include <utility>
#include <vector>

#include "host/workbooks/inputs_sheet.hpp"
#include "host/workbooks/run_rows.hpp"
#include "host/workbooks/traced_request.hpp"

namespace flutebook::workbooks {

/// What a column is made of. Refers to what outlives it.
struct RunColumnSources {
    const RunRows& rows;
    const CostSheet& costs;
    RunShape shape;
    std::string letter;         // of the column
    std::string quantity_cell;  // of the request
    TracedRequest& request;
    InputsSheet& inputs;
};

/// A made column: its cells by their rows, and where it has the numbers that models know, by name and place.
struct RunColumn {
    std::map<std::size_t, render::BookCell> cells;
    std::map<std::pair<std::string, std::string>, std::string> known;  // "paper.issued", "ply 2 SC127": "$D$31"
};

/// Throws ModelError.
[[nodiscard]] RunColumn run_column(const RunColumnSources& sources);

}  // namespace flutebook::workbooks
