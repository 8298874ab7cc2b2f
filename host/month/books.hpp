// What a month's account is worked out from: totals of the ledger, and what stood in stock when the month began.
//
// Plain values: the code that works out an account needs no ledger, and the code that reads the ledger does no
// arithmetic.
#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "ledger/reading/month.hpp"

namespace flutebook::month {

/// A count of the floor or of a scrap stock, beside what the books say of the account that day.
struct CountedDay {
    std::string account;
    ledger::Date date;
    Grams counted;
    Grams moved;  // what came in less what went out, from the month's first day to the end of this one
};

struct MonthBooks {
    ledger::Month month;
    /// Inner accounts as the month before left them, with what the stock of machines and floor cost.
    std::vector<ledger::Balance> opening;
    std::vector<ledger::Flow> flows;
    /// Those of the flows that reversals of earlier months' rows moved, with the other sign.
    std::vector<ledger::Flow> corrections;
    std::vector<ledger::ExpectedLoss> expected;
    std::vector<ledger::StandingCount> counts;
    /// Of accounts that are no machines, in order of date.
    std::vector<CountedDay> counted_days;
    /// Money per kg on the month's last day: what a paper costs that was used where none came in.
    std::map<std::string, double> paper_prices;
};

/// What closing a month posts: differences to or from `unexplained`, and cost that left with the product and the scrap
/// back to `costs`. They are worked out of the account, so they are no part of it.
[[nodiscard]] bool is_of_close(const ledger::Flow& flow);

/// The month's last day.
[[nodiscard]] ledger::Date last_day(ledger::Month month);

}  // namespace flutebook::month
