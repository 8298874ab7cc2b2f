// One request's answer as it is kept with a saved quote: the page, and a document in JSON with this request alone.
#pragma once

#include "host/desk/quote.hpp"
#include "host/desk/saved_quote.hpp"

namespace flutebook::cli {

[[nodiscard]] desk::Shown whole_answer(const catalogue::Plant& plant, const desk::RequestAnswer& answer,
                                       const desk::Asked& asked);

}  // namespace flutebook::cli
