// What a month and its close answer: plain values, and the documents that `month --json` and `close --json` write.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "host/month/account.hpp"
#include "host/month/breakdown.hpp"
#include "host/month/corrected_row.hpp"
#include "host/month/excess.hpp"
#include "host/trim_answers/trim_months.hpp"
#include "ledger/writing/close.hpp"

namespace flutebook::answers {

struct MonthAnswer {
    month::MonthAccount account;
    std::optional<ledger::Seal> seal;  // of a closed month
    double tolerance;                  // share of issued paper that may remain unexplained
    /// The twelve months that end with this one, without those in which nothing was posted; the earliest first.
    std::vector<month::MonthAccount> trend;
    std::vector<month::PartFlows> parts;  // only with `by`
    std::optional<ledger::Axis> by;
    bool is_worked_out_again = false;  // a closed month whose close kept no account: by the rules of today
    month::ScrapValue scrap;           // what an excess of loss is valued less
    std::vector<month::CorrectedRow> corrected_rows;  // in order of posting
    /// What the month waits for before it can be closed, a sentence each; empty where it is closed or can be.
    std::vector<std::string> close_waits_for;
    /// Models whose losses orders of the month were quoted with, where they are not those of the formulas of a run, by
    /// which everything here is expected.
    std::vector<std::string> losses_quoted_by = {};
    trim_answers::TrimMonths trim = {};

    [[nodiscard]] bool balances() const { return month::balances_within(account, tolerance); }
    /// Of the twelve months together.
    [[nodiscard]] std::optional<double> recycling_rate_of_year() const;
};

struct CloseAnswer {
    ledger::Seal seal;
    month::MonthAccount account;
    double tolerance;
    std::string clock_note;  // that the machine's clock lags behind the books; else empty
};

/// "2026-10".
[[nodiscard]] std::string month_name(ledger::Month month);
/// "machine", "shift", "board", "order".
[[nodiscard]] const char* axis_name(ledger::Axis axis);

/// A month's account: kg with three decimals, money with four, metric for every plant.
///
/// {"month", "issued_kg", "adhesive_kg", "product_kg", "loss_kg": {CAUSE}, "expected_kg": {CAUSE},
///  "unexplained_kg": {CENTRE}, "centre_kg": {MACHINE: {"open", "in", "out", "close"}},
///  "floor_kg": {"open", "made", "fed", "returned", "counted", "close"},
///  "loose_scrap_kg": {"open", "made", "baled", "counted", "close"},
///  "bale_yard_kg": {"open", "baled", "sent", "counted", "close"}, "sent_kg", "paid_kg", "revenue",
///  "waste_cost": {CAUSE, "unexplained", "idle", "corrections"}, "excess_value": {CAUSE} (cash that the excess would
///  have saved), "scrap_value_per_kg" (of that; null where no scrap was sold in twelve months), "product_cost",
///  "floor_cost": {"open", "close"}, "recycling_rate" (null where no scrap was made), "corrections": [{"entry", "date",
///  "document" (its kind), "ref" (both of what a reversal undoes), "reverses" (the day of what it undoes; null of a row
///  that has a note), "note"}...], "close_waits_for": [SENTENCE...] (what stands in the way of closing it; empty where
///  it is closed or can be), "losses_quoted_by": [MODEL...] (models whose losses orders of the month were quoted with,
///  where they are not those of the formulas of a run, by which everything here is expected), "trim": what
///  corrugators trimmed (see trim_answers/trim_months)}
/// and with --by: "by", "parts": [{"of", "issued_kg", "made_kg", "fed_kg", "product_kg", "loss_kg": {CAUSE},
///  "expected_kg": {CAUSE}}...]; by board and by order both are without the causes that are weighed.
///
/// `counted` is what counts found above the book stock; `unexplained_kg` of the floor is the same with the opposite
/// sign. Scrap weighed off the floor is among the losses: floor close = open + made - fed + returned + counted - that.
[[nodiscard]] std::string month_document(const MonthAnswer& answer);

/// {"month", "entry" (of the seal), "head" (to keep elsewhere), "unexplained_kg", "balances", "why", "clock" (that the
/// machine's clock lags behind the books; else null)}
[[nodiscard]] std::string close_document(const CloseAnswer& answer);

}  // namespace flutebook::answers
