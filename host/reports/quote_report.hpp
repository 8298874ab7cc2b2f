// The answer to one request, for people: the price ladder over all its quantities, then a cost sheet for each, then
// the limits of those that cannot be made.
#pragma once

#include "host/answers/quote_answer.hpp"
#include "host/plant/plant.hpp"
#include "host/render/report.hpp"

namespace flutebook::reports {

/// Nothing but the heading where a model was at fault: that is told on stderr. Quantities that the same limits stop are
/// told together; where one limit stops many ways, the first are named and the others counted.
[[nodiscard]] render::Report quote_report(const plant::Plant& plant, const answers::RequestAnswer& answer,
                                          const answers::QuoteOptions& asked);

}  // namespace flutebook::reports
