// One request's answer as it is kept with a saved quote: the page, and a document in JSON with this request alone.
#pragma once

#include "host/answers/quote_answer.hpp"

namespace flutebook::reports {

[[nodiscard]] answers::Shown whole_answer(const plant::Plant& plant, const answers::RequestAnswer& answer,
                                          const answers::QuoteOptions& asked);

}  // namespace flutebook::reports
