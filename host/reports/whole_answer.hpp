// One request's answer as it is kept with a saved quote: the page, and a document in JSON with this request alone.
#pragma once

#include "host/services/quoting/quote.hpp"
#include "host/services/quoting/saved_quote.hpp"

namespace flutebook::reports {

[[nodiscard]] services::Shown whole_answer(const plant::Plant& plant, const services::RequestAnswer& answer,
                                           const services::QuoteOptions& asked);

}  // namespace flutebook::reports
