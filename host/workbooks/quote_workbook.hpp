// A quote as a workbook that calculates: prices follow by formulas from the lines of cost, those from the run, and the
// run from the numbers that it was given.
#pragma once

#include "host/answers/quote_answer.hpp"
#include "host/engine/engine.hpp"
#include "host/plant/plant.hpp"
#include "host/render/formula_book.hpp"

namespace flutebook::workbooks {

/// Sheets: "Quote", the ladder; "Cost N" a quantity, of a set a quantity and piece, a row a line, each amount
/// ROUND(quantity*rate*(1+2E-15),4); "Run", a column a quantity and piece, with its balance; "Inputs", each number that
/// moves a line, once, with file and line; "Origins", which of them move each line. A line's quantity or rate is a link
/// where it is, bit for bit, a number that its model was given, or a thousandth of one; else it is what a compiled
/// model worked out, and a value. `answer` must be the request's own, asked for as `asked` says, with at least one
/// quantity that can be made. Throws ModelError, and InputError as quoting does.
[[nodiscard]] render::FormulaBook quote_workbook(const plant::Plant& plant, const engine::Engine& engine,
                                                 const answers::RequestAnswer& answer,
                                                 const answers::QuoteOptions& asked);

}  // namespace flutebook::workbooks
