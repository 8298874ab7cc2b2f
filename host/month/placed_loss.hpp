// The losses of a month by centre, shift and cause, for the pages that lead from a figure to its rows.
#pragma once

#include <string>
#include <vector>

#include "host/month/account.hpp"
#include "ledger/reading/month.hpp"

namespace flutebook::month {

struct PlacedLoss {
    std::string centre;  // a machine or another account; as the entries name it
    std::string part;    // the shift, where totals by shift were given; empty: entries that name none
    std::string cause;
    Grams actual, expected;

    [[nodiscard]] Grams excess() const { return actual - expected; }
};

/// By the order of their names; none in which nothing was lost and nothing expected. They add up to the month's losses.
[[nodiscard]] std::vector<PlacedLoss> placed_losses(const std::vector<ledger::Share>& shares,
                                                    const std::vector<ledger::ExpectedShare>& expected);

/// What is above nothing and what is below it, each by itself: a month that is better in one place is told so, never
/// netted with another.
struct TwoSides {
    Grams over, under;  // neither is below zero

    void add(Grams difference);
};

/// Of the causes' losses against what was expected of them.
[[nodiscard]] TwoSides excess_sides(const MonthAccount& account);
/// Of what machines and floor cannot explain: `over` is missing, `under` was found beyond the books.
[[nodiscard]] TwoSides unexplained_sides(const MonthAccount& account);

}  // namespace flutebook::month
