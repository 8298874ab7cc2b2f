// A month compared with others and by its parts, for its review: what the month's own answer has, beside last month,
// the year to date and last year; where losses beyond the expected fell. Plain values, and their document.
//
// Nothing nets: what was lost beyond the expected stands apart from what was lost less, what is missing from what was
// found.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "host/month/placed_loss.hpp"
#include "host/month_answers/month_answer.hpp"

namespace flutebook::answers {

/// Several months together.
struct MonthsTogether {
    ledger::Month first, last;
    std::size_t months = 0;  // in which something was posted
    Grams issued, product, lost, expected, sent;
    month::TwoSides excess, unexplained;  // sums of the months' own
    Money waste_cost, excess_value, revenue;
};

/// Mass between two accounts, after what was moved back.
struct MassStream {
    std::string from, to;
    Grams mass;
};

/// What a machine lost in a shift, in a month or for an order, of all causes together or of one.
struct LossOfPart {
    std::string part;
    Grams actual, expected;
    Money excess_value;  // cash, at the month's value of a kilogram of each cause

    [[nodiscard]] Grams excess() const { return actual - expected; }
};

struct LossOfMachine {
    std::string machine;
    std::vector<LossOfPart> shifts;  // as `shifts` of the review
    std::vector<LossOfPart> months;  // as the months of the trend
};

struct SaleToMill {
    std::string mill, grade;
    std::int64_t tickets = 0;
    Grams sent, paid;
    Money revenue;
};

struct MonthReview {
    std::string currency;
    MonthAnswer month;                            // with its trend, not broken down
    std::optional<ledger::Month> next;            // the next in which something was posted
    std::optional<month::MonthAccount> before;    // the month before, where something was posted in it
    std::optional<month::MonthAccount> year_ago;  // the same month a year ago, likewise
    std::optional<double> target;                 // the plant's: share of issued paper that it means to lose at most
    MonthsTogether to_date;                       // of the year, this month the last
    std::optional<MonthsTogether> last_year;      // the same months a year ago
    /// What the causes with more than was expected of them were worth in cash, and those with less: each by itself.
    Money beyond_value, below_value;
    std::vector<MassStream> streams;  // by the order of their names
    std::vector<std::string> shifts;
    std::vector<LossOfMachine> machines;  // and other places that lost something; by the order of their names
    std::vector<LossOfPart> orders;       // the dearest excess first; without weighed causes
    std::int64_t unranked_movements = 0;  // so many that the orders were not ranked; else 0
    std::vector<SaleToMill> mills;        // by mill and grade
};

/// One cause of a month, by the places where it was lost.
struct CauseReview {
    std::string currency;
    ledger::Month month;
    std::string cause;
    Grams issued;                           // of the whole month
    std::vector<month::PlacedLoss> places;  // by centre and shift
    std::vector<Money> excess_values;       // as `places`
    Grams actual, expected;                 // their sums
    Money excess_value, cost;               // of the month's account, after ISO 14051 the second
};

/// A month in a list of months.
struct MonthInList {
    month::MonthAccount account;
    bool is_closed = false;
    Money excess_value;
};
struct MonthList {
    std::string currency;
    std::vector<MonthInList> months;  // the latest first
};

/// {"month", "next" (month or null), "currency", "issued_kg", "product_kg", "lost_kg", "expected_kg",
/// "beyond_expected_kg", "below_expected_kg",
///  "missing_kg", "found_kg" (all four not below zero), "waste_cost", "excess_value", "beyond_expected_value",
///  "below_expected_value" (they come to excess_value),
///  "waste_target" (of issued paper, or null), "before": FIGURES or null, "year_ago": FIGURES or null, "year_to_date":
///  TOGETHER, "last_year_to_date": TOGETHER or null, "streams": [{"from", "to", "kg"}...], "machines": [{"machine",
///  "shifts": [PART...], "months": [PART...]}...], "orders": [PART...] (null where there are too many movements to rank
///  them unasked), "mills": [{"mill", "grade", "tickets", "sent_kg", "paid_kg", "revenue"}...], "trend": [FIGURES...]}
/// FIGURES = {"month", "issued_kg", "product_kg", "lost_kg", "expected_kg", "unexplained_kg", "sent_kg", "waste_cost",
/// "revenue"}; TOGETHER = {"first", "last", "months", "issued_kg", "product_kg", "lost_kg", "expected_kg",
/// "beyond_expected_kg", "below_expected_kg", "missing_kg", "found_kg", "sent_kg", "waste_cost", "excess_value",
/// "revenue"}; PART = {"of", "actual_kg", "expected_kg", "excess_kg", "excess_value"}.
[[nodiscard]] std::string month_review_document(const MonthReview& answer);

/// {"month", "cause", "currency", "actual_kg", "expected_kg", "excess_value", "waste_cost", "places": [{"centre",
/// "shift", "actual_kg", "expected_kg", "excess_kg", "excess_value"}...]}
[[nodiscard]] std::string cause_review_document(const CauseReview& answer);

/// {"currency", "months": [FIGURES with "closed", "excess_value"...]}
[[nodiscard]] std::string month_list_document(const MonthList& answer);

}  // namespace flutebook::answers
