// The kinds of documents, each worked out in a source of its own. Called by worth().
#pragma once

#include "host/production/row_validation.hpp"

namespace flutebook::production {

[[nodiscard]] Worth paper_issue(RowValidation& examination);
[[nodiscard]] Worth corrugator_run(RowValidation& examination);
[[nodiscard]] Worth converter_run(RowValidation& examination);
[[nodiscard]] Worth weighed_scrap(RowValidation& examination);
[[nodiscard]] Worth bale(RowValidation& examination);
[[nodiscard]] Worth ticket(RowValidation& examination);
[[nodiscard]] Worth centre_cost(RowValidation& examination);
[[nodiscard]] Worth count(RowValidation& examination);

/// Adds what moved, and what was expected, unless it is nothing.
void add(ledger::Draft& draft, const ledger::Movement& movement);
void add(ledger::Draft& draft, const ledger::Expected& expected);

}  // namespace flutebook::production
