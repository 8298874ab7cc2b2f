// The parts of a quote's document that tell how its prices were made: "price_rules" and "second_currency" of Q,
// "valid_until", "tolerance" and "approval" of R.
#pragma once

#include "host/answers/json_text.hpp"
#include "host/answers/quote_answer.hpp"

namespace flutebook::answers {

/// Into Q.
void add_price_making(Json& tree, const PriceMaking& making);
[[nodiscard]] PriceMaking price_making_in(const Json& tree);

/// Into R.
void add_offer_terms(Json& tree, const RequestAnswer& answer);
void read_offer_terms(const Json& tree, RequestAnswer& answer);

}  // namespace flutebook::answers
