// From what an order costs to the price of a thousand and its parts.
#pragma once

#include <optional>

#include "host/answers/quote_answer.hpp"
#include "host/lists/list_costing.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::lists {

/// What an order of `quantity` costs by class, at its price. `cost_per_thousand` is the sum of the classes, rounded.
[[nodiscard]] PriceParts parts_of_price(const engine::ClassCosts& order, double quantity, Money cost_per_thousand,
                                        Money price);

/// Of a quote that can be made: of boxes or of a set. Throws InputError (request) where it is worth too much.
[[nodiscard]] ItemPrice price_of(const plant::Plant& plant, const answers::RequestAnswer& answer);

/// The boxes at their price per thousand, in the currency's smallest coin; nothing where that is too large to be kept.
[[nodiscard]] std::optional<Money> order_value(const plant::Plant& plant, Money price, double quantity);

}  // namespace flutebook::lists
