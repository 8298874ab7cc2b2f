// What a month and its close answer. Plain values.
#pragma once

#include <optional>
#include <vector>

#include "host/month/account.hpp"
#include "host/month/breakdown.hpp"
#include "ledger/writing/close.hpp"

namespace flutebook::answers {

struct MonthAnswer {
    month::MonthAccount account;
    std::optional<ledger::Seal> seal;  // of a closed month
    double tolerance;                  // share of issued paper that may stay unexplained
    /// The twelve months that end with this one, those in which something was posted; the earliest first.
    std::vector<month::MonthAccount> trend;
    std::vector<month::PartFlows> parts;  // where they were asked for
    std::optional<ledger::Axis> by;

    [[nodiscard]] bool balances() const { return month::balances_within(account, tolerance); }
    /// Of the twelve months together.
    [[nodiscard]] std::optional<double> recycling_rate_of_year() const;
};

struct CloseAnswer {
    ledger::Seal seal;
    month::MonthAccount account;
    double tolerance;
};

}  // namespace flutebook::answers
