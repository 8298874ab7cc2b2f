// What an order, or one input of it, cost at each stage between its quote and what really was, and the four differences
// that lead from one to the other. Plain arithmetic: exact, since money is whole.
#pragma once

#include <optional>

#include "ledger/values/money.hpp"

namespace flutebook::answers {

/// Five costs of the same thing, each with one thing more as it was.
struct Stages {
    Money quoted;     // the quote
    Money standard;   // what the quote allows for the boxes that were made
    Money converted;  // the converters as they ran, the corrugator as allowed for the sheets they were given
    Money used;       // the corrugator as it ran too
    Money paid;       // at the prices of the days it ran

    Stages& operator+=(const Stages& other);
    friend Stages operator-(const Stages& left, const Stages& right);
    friend bool operator==(const Stages&, const Stages&) = default;
};

/// Positive is dearer. They add up to what was paid less what was quoted.
struct Variances {
    Money volume;  // other boxes than were quoted
    Money yield;   // what converters lost more than allowed
    Money usage;   // what the corrugator used more than allowed
    Money price;   // paid more for it

    [[nodiscard]] Money total() const { return volume + yield + usage + price; }
};

[[nodiscard]] Variances variances_of(const Stages& stages);

/// A material, quantities in any one unit. The intermediate output is what the converters were given to work with.
struct MaterialInput {
    double quoted;    // the quote's own
    double standard;  // SQ: allowed for the output that was made
    double allowed;   // M: allowed for the intermediate output; with a mix, the standard mix of the actual total
    double used;      // AQ
    double standard_price, actual_price;  // SP, AP
};

/// The amounts of an input, each rounded once, so that
///   yield = (M - SQ) SP,  usage = (AQ - M) SP,  price = AQ (AP - SP).
/// Nothing where one is too large to be kept.
[[nodiscard]] std::optional<Stages> stages_of(const MaterialInput& input);

}  // namespace flutebook::answers
