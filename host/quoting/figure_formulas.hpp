// The figures that are worked out from what models give, each with its formula: sums of lines, unit costs, the price.
#pragma once

#include <string>
#include <vector>

#include "host/answers/quote_answer.hpp"
#include "host/explain/formula.hpp"

namespace flutebook::quoting {

/// The formulas of a quote, which is complete but for its trails. Those of the price only of boxes, not of a piece.
[[nodiscard]] std::vector<explain::Formula> formulas_of(const answers::Quote& quote);

/// Their names; those that only a price gives apart.
[[nodiscard]] const std::vector<std::string>& formula_names();
[[nodiscard]] const std::vector<std::string>& price_formula_names();

}  // namespace flutebook::quoting
