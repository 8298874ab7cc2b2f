// How an order pays for a share of its web, as a part of a quote's document, written and read.
#pragma once

#include "host/answers/json_text.hpp"
#include "host/answers/quote_answer.hpp"

namespace flutebook::answers {

/// {"share","changes","alone":[{"quantity","price_per_thousand","own_share"}]}, the price null where none can be made.
[[nodiscard]] Json shared_trim_json(const SharedTrim& trim);

/// Throws nlohmann::json::exception where it is none.
[[nodiscard]] SharedTrim shared_trim_in(const Json& tree);

}  // namespace flutebook::answers
