// From what an order costs to the price of a thousand and its parts.
#pragma once

#include "host/answers/list_answer.hpp"
#include "host/answers/quote_answer.hpp"

namespace flutebook::lists {

/// What an order of `quantity` costs by class, at its price. `cost_per_thousand` is the sum of the classes, rounded.
[[nodiscard]] answers::PriceParts parts_of_price(const engine::ClassCosts& order, double quantity,
                                                 Money cost_per_thousand, Money price);

/// Of a quote that can be made: of boxes or of a set.
[[nodiscard]] answers::ItemPrice price_of(const answers::RequestAnswer& answer);

}  // namespace flutebook::lists
