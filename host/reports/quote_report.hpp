// The answer to one request, for people: the price ladder over all its quantities, then a cost sheet for each, then
// the limits of those that cannot be made.
#pragma once

#include "host/answers/quote_answer.hpp"
#include "host/plant/plant.hpp"
#include "host/render/report.hpp"

namespace flutebook::reports {

/// The heading alone where a model was at fault: stderr says so. Quantities that the same limits stop share a part;
/// where one limit stops many ways, the first are named and the others counted.
[[nodiscard]] render::Report quote_report(const plant::Plant& plant, const answers::RequestAnswer& answer,
                                          const answers::QuoteOptions& asked);

}  // namespace flutebook::reports
