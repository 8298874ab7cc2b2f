// The month: from the ledger's totals to an account that balances.
#pragma once

#include "host/month/account.hpp"
#include "host/month/books.hpp"

namespace flutebook::month {

/// Pure: the same books, the same account. Throws LedgerError, unfit, naming what does not balance, where mass does not
/// to the gram or money does not before it is rounded; and where something moved in a way that no document moves it.
[[nodiscard]] MonthAccount month_account(const MonthBooks& books);

}  // namespace flutebook::month
