// Quoting, the use-case that both faces call: calculates what a request costs at each quantity, with every figure that
// the cost accountant has to explain. Faces show it and compute nothing.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "host/answers/quote_answer.hpp"
#include "host/engine/engine.hpp"
#include "host/explain/trail.hpp"
#include "host/geometry/layout.hpp"
#include "host/orders/order_record.hpp"
#include "host/orders/request.hpp"
#include "host/plant/plant.hpp"
#include "ledger/values/money.hpp"

namespace flutebook::quoting {

/// Costs every quantity of a request. Any thread, any number at once. A model at fault is told in the answer; throws
/// InputError (request) where the request's extras do not fit the models, or no model has the line to explain.
[[nodiscard]] answers::RequestAnswer quote(const plant::Plant& plant, const engine::Engine& engine,
                                           const orders::Request& request, const answers::QuoteOptions& asked);

}  // namespace flutebook::quoting
