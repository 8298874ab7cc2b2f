// Checks what is shown of a closed month, or about to be sealed, against the movements. It reads the entries of that
// month and what its seal and the seal before it say: the time does not grow with the other months.
#pragma once

#include "ledger/store/store.hpp"
#include "ledger/values/entry.hpp"

namespace flutebook::ledger {

/// Before a month is shown. Throws LedgerError, refused, with each difference as a line: the month is closed, and its
/// entries, totals or stocks are not what was sealed; or the seal that an open month begins with does not hold.
void expect_seal_holds(const Store& store, Month month);

/// Before a month is closed. Throws LedgerError, refused, with each difference as a line: its totals are not what its
/// entries make, an entry since the last seal was changed, or that seal does not hold.
void expect_fit_to_close(const Store& store, Month month);

}  // namespace flutebook::ledger
