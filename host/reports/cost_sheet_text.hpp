// The answer to one request, for people: the price ladder over all its quantities, then a cost sheet for each, then
// what stops those that nothing can make.
#pragma once

#include <string>

#include "host/services/quoting/quote.hpp"

namespace flutebook::reports {

/// Lines of at most 100 columns, each with its line end. Empty where a model was at fault: that is told on stderr.
[[nodiscard]] std::string answer_text(const plant::Plant& plant, const services::RequestAnswer& answer,
                                      const services::QuoteOptions& asked);

}  // namespace flutebook::reports
