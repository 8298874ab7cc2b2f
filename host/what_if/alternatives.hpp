// A request compared with its variants: on each of several boards, at each of several margins or prices. One that
// cannot be answered says why in its place and stops none of the others.
#pragma once

#include <string>
#include <vector>

#include "host/scenario/number_change.hpp"
#include "host/what_if_answers/alternatives_answer.hpp"
#include "host/workplace/workplace.hpp"

namespace flutebook::what_if {

/// What is left empty is the request's own. Either margins or prices are given, or neither.
struct AskedAlternatives {
    std::vector<std::string> boards;
    std::vector<double> margins;  // shares of the price
    std::vector<Money> prices;    // of a thousand

    [[nodiscard]] bool is_any() const { return !boards.empty() || !margins.empty() || !prices.empty(); }
};

/// With the `changes` made first, one after the other. Board by board, on each every margin or price. The margin of a
/// price is that at which the request is quoted so: it is below zero where the price is below the cost, which is a
/// warning. Throws InputError (request) where a price has more decimals than the currency, and where a changed path or
/// value is wrong.
[[nodiscard]] what_if_answers::Alternatives alternatives(const workplace::Workplace& workplace,
                                                         const orders::Request& request, const AskedAlternatives& asked,
                                                         const std::vector<scenario::NumberChange>& changes,
                                                         const answers::QuoteOptions& options);

}  // namespace flutebook::what_if
