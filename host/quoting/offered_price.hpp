// Calculates the offered price from the cost per thousand, rule by rule: the margin, then up to a multiple, then up to
// the least order.
#pragma once

#include <optional>

#include "host/answers/price_rules.hpp"
#include "host/orders/request.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::quoting {

struct OfferedPrice {
    Money per_thousand;
    answers::PriceMaking making;
};

/// Of `quantity` boxes or sets; `cost` is that of a thousand, unrounded. The margin's price is rounded to the
/// currency's coin. A price below zero is left as the margin made it. Nothing where an amount is too large to be kept.
///
/// A price is raised to the least order by the least that a price in coins needs: so the order value is the least order
/// itself up to a thousand boxes, and above them passes it by less than a coin a thousand.
[[nodiscard]] std::optional<OfferedPrice> offered_price(const plant::Plant& plant, const orders::Request& request,
                                                        double quantity, double cost);

/// The last day of the offer, counted from the request's, and what quantities the customer takes.
[[nodiscard]] answers::OfferTerms offer_terms(const plant::Plant& plant, const orders::Request& request);

}  // namespace flutebook::quoting
