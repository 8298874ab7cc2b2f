// The answer of one item of a list: its price, what the price is made of and lacks, and what it differs by from an old
// one. Plain values.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "host/answers/quote_answer.hpp"
#include "host/base/place.hpp"
#include "host/engine/row.hpp"
#include "ledger/values/money.hpp"

namespace flutebook::answers {

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
    std::vector<NotInPrice> not_in_price;
    PriceMaking making = {};
};

/// What a price differs by from the old one, and why. All add up to the difference.
struct PriceChange {
    Money old, difference;
    double share;  // of the old price; 0 where that is 0
    struct Reason {
        engine::ClassCosts by_class;
        Money profit, not_explained;
    };
    std::optional<Reason> reason = std::nullopt;
};

/// A row of the list as it was answered.
struct ListedItem {
    std::string at;                           // file:line:column
    std::string request, customer, quantity;  // as the row has them; empty where it does not
    std::optional<ItemPrice> price;
    std::optional<PriceChange> change;
    std::vector<base::Warning> warnings;
    std::vector<std::string> errors;  // finished sentences with their places
};

}  // namespace flutebook::answers
