// JSON parts that several documents share.
#pragma once

#include <vector>

#include "host/answers/json_text.hpp"
#include "host/answers/quote_answer.hpp"
#include "host/base/place.hpp"

namespace flutebook::answers {

/// [W...] of the document of a quote.
[[nodiscard]] Json warnings_json(const std::vector<base::Warning>& warnings);

/// [N...] of the document of a quote.
[[nodiscard]] Json not_in_price_json(const std::vector<NotInPrice>& items);

}  // namespace flutebook::answers
