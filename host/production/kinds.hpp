// The kinds of documents, each worked out in a source of its own. Called by worth().
#pragma once

#include "host/production/row_validation.hpp"

namespace flutebook::production {

[[nodiscard]] Worth paper_issue(Examination& examination);
[[nodiscard]] Worth corrugator_run(Examination& examination);
[[nodiscard]] Worth converter_run(Examination& examination);
[[nodiscard]] Worth weighed_scrap(Examination& examination);
[[nodiscard]] Worth bale(Examination& examination);
[[nodiscard]] Worth ticket(Examination& examination);
[[nodiscard]] Worth centre_cost(Examination& examination);
[[nodiscard]] Worth count(Examination& examination);

/// Adds what moved, and what was expected, unless it is nothing.
void add(ledger::Draft& draft, const ledger::Movement& movement);
void add(ledger::Draft& draft, const ledger::Expected& expected);

}  // namespace flutebook::production
