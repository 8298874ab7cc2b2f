// What must hold before a month is closed for good, and what still stands in its way.
//
// A closed month takes no entry, so it is closed only when its documents can be there: the month is over, no month
// before it was passed over, no stock is below zero, and every machine whose books do not end near zero was counted.
#pragma once

#include <string>
#include <vector>

#include "host/month/account.hpp"
#include "host/month/books.hpp"

namespace flutebook::month {

/// Whether months without rows may be closed: somebody says that nothing ran.
enum class EmptyMonths { refuse, accept };

/// What the books and the machine's clock say around a month.
struct ClosingFacts {
    ledger::Date today;                      // by the machine's clock, UTC
    bool is_followed;                        // production of a later month is posted
    std::vector<ledger::Month> open_before;  // earlier months with rows that are not closed
    std::vector<ledger::Month> empty;        // after the last closed month, up to this one: nothing is posted in them
};

/// What the month waits for, a sentence each; empty where it can be closed.
[[nodiscard]] std::vector<std::string> closing_conditions(const MonthAccount& account, const ClosingFacts& facts,
                                                          double tolerance, EmptyMonths empty);

/// Where the month is over by the books alone: that the clock lags behind them. Else empty.
[[nodiscard]] std::string lagging_clock(ledger::Month month, const ClosingFacts& facts);

/// Whether something ran: mass came to or left a machine.
[[nodiscard]] bool is_production(const ledger::Flow& flow);

/// "2026-10".
[[nodiscard]] std::string text_of(ledger::Month month);

}  // namespace flutebook::month
