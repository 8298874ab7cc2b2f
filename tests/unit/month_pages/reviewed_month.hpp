// A month with one cause over and one under what was expected, at two machines, for two orders.
#pragma once

#include <nlohmann/json_fwd.hpp>

#include "host/month_answers/month_review.hpp"
#include "tests/unit/month/month_bench.hpp"

namespace flutebook::fixture {

/// Side trim: 34 kg of 20 expected at C1, of which the night 14 of 10 for order 4711; rejects: 6 kg of 10 at FG1 for
/// order 4712.
struct ReviewedMonth {
    ReviewedMonth();

    MonthBench bench;
    double lost_kg = 40;

    /// So much is lost at C1 in another month, and nothing expected; `bench.month` is that month afterwards.
    void lose_in(ledger::Month month, double kg);

    [[nodiscard]] answers::MonthReview review() const;
    [[nodiscard]] nlohmann::json document() const;
};

}  // namespace flutebook::fixture
