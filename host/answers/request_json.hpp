// The tree of one request's answer, R of the quote's document (quote_json.hpp), for the documents of this room.
#pragma once

#include "host/answers/json_text.hpp"
#include "host/answers/quote_answer.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::answers {

[[nodiscard]] Json request_json(const plant::Plant& plant, const RequestAnswer& answer, const QuoteOptions& asked);

}  // namespace flutebook::answers
