// Which of the plant's rules made a price, and what else they add: second currency, validity, tolerance, approval.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "host/base/date.hpp"
#include "host/plant/pricing.hpp"
#include "ledger/values/money.hpp"

namespace flutebook::answers {

/// One rule that had a part in a price; a rule that changed nothing has none.
struct PriceRule {
    enum class Kind { request_margin, customer_margin, quantity_margin, round_up, least_order };
    Kind kind;
    double value;              // the margin, the multiple, the least order value
    std::string at;            // where it stands
    Money price_per_thousand;  // after it
};

/// As documents spell it: "request-margin".
[[nodiscard]] const char* to_text(PriceRule::Kind kind);

/// The price in the plant's second currency, in its coins.
struct SecondPrice {
    std::string currency;
    int minor_units;
    double rate;  // of it for one of the plant's
    Money price_per_thousand, order_value;
};

/// How a price came about, rule by rule, and what it is elsewhere.
struct PriceMaking {
    std::vector<PriceRule> rules;  // empty in old documents, and of a piece of a set
    std::optional<SecondPrice> second;
};

/// What an offer holds beside its prices.
struct OfferTerms {
    std::optional<base::Date> valid_until;
    std::optional<plant::Tolerance> tolerance;
    std::string tolerance_at;  // where that stands
};

/// Who approved of a quote that brings less than the plant's limit.
struct Approval {
    std::string by;
    double below;    // the lowest limit that a profit share is below
    std::string at;  // where that stands
};

}  // namespace flutebook::answers
