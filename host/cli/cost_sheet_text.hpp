// The answer to one request, for people: the price ladder over all its quantities, then a cost sheet for each, then
// what stops those that nothing can make.
#pragma once

#include <string>

#include "host/desk/quote.hpp"

namespace flutebook::cli {

/// Lines of at most 100 columns, each with its line end. Empty where a model was at fault: that is told on stderr.
[[nodiscard]] std::string answer_text(const catalogue::Plant& plant, const desk::RequestAnswer& answer,
                                      const desk::Asked& asked);

}  // namespace flutebook::cli
