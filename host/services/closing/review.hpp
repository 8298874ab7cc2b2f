// A month as it is reviewed, one of its causes by the places that lost by it, and the list of all months: what pages
// and programs ask for beside `month`.
#pragma once

#include <cstdint>
#include <string>

#include "host/month_answers/month_review.hpp"
#include "host/plant/plant.hpp"
#include "ledger/store/store.hpp"

namespace flutebook::services {

struct ReviewOptions {
    ledger::Month month;
    ledger::Date today;  // by the machine's clock
    /// Orders are ranked by reading the month's entries, all else by its totals: in a month with more movements they
    /// are left out.
    std::int64_t most_movements = 100000;
};

/// Throws LedgerError. The answer is of one instant, whatever is posted meanwhile.
[[nodiscard]] answers::MonthReview month_review(const plant::Plant& plant, const ledger::Store& store,
                                                const ReviewOptions& asked);

/// Reads totals alone. A cause that the month does not know has no places. Throws LedgerError.
[[nodiscard]] answers::CauseReview cause_review(const plant::Plant& plant, const ledger::Store& store,
                                                ledger::Month month, const std::string& cause);

/// Every month in which something was posted. Throws LedgerError.
[[nodiscard]] answers::MonthList month_list(const plant::Plant& plant, const ledger::Store& store);

}  // namespace flutebook::services
