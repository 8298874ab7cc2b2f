// The month: from the ledger's totals to an account that balances.
#pragma once

#include "host/month/account.hpp"
#include "host/month/books.hpp"
#include "host/month/flows_by_account.hpp"

namespace flutebook::month {

/// Pure: the same books, the same account. Throws LedgerError, unfit, naming what does not balance, where mass does not
/// to the gram or money does not before it is rounded; and where something moved in a way that no document moves it.
[[nodiscard]] MonthAccount month_account(const MonthBooks& books);

/// Of a closed month that is worked out again: what its stocks cost is what the close posted, `posted`, and a
/// difference is the cost of corrections.
void adopt_closing_stock(MonthAccount& account, const std::vector<ledger::Balance>& posted);

/// Shares every such loss among the papers by the kg that were issued of each (where none was: by what stood there,
/// else by what ran). Whole grams that add up to the loss.
void name_weighed_paper(MachineFlows& machine);

}  // namespace flutebook::month
