// What the requests of a list cost: many at once, since the engine is quickest over many rows.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "host/answers/price_rules.hpp"
#include "host/base/place.hpp"
#include "host/engine/row.hpp"
#include "host/orders/request.hpp"
#include "host/workplace/workplace.hpp"
#include "ledger/values/money.hpp"

namespace flutebook::lists {

/// The price of a thousand and what it is made of: the five classes and the profit add up to it.
struct PriceParts {
    Money price, cost;
    engine::ClassCosts by_class;  // a thousand, in the order of contract::CostClass; recovery is below zero
    Money profit;
};

struct ItemPrice : PriceParts {
    Money order_value;       // all of them, rounded as an invoice is
    std::string made_on;     // "C1 > FG1"; of a set, piece by piece
    std::string roll_width;  // mm; of a set, piece by piece
    answers::PriceMaking making = {};
};

/// An item that was costed, or why it was not.
struct CostedItem {
    enum class State { costed, refused, unfit };
    State state = State::costed;
    std::optional<ItemPrice> price;
    std::vector<std::string> errors;  // finished sentences with their places
    std::vector<base::Warning> warnings;
};

/// Each request has one quantity. The answer of each is that of quoting::quote(), to the last digit and whatever stands
/// beside it in the list. Any thread.
[[nodiscard]] std::vector<CostedItem> cost_items(const workplace::Workplace& workplace,
                                                 const std::vector<const orders::Request*>& requests);

}  // namespace flutebook::lists
