// One blank of a request, the box of one piece or a piece of a set, at each of its quantities: made the cheapest way.
#pragma once

#include <vector>

#include "host/answers/quote_answer.hpp"
#include "host/engine/engine.hpp"
#include "host/geometry/layout.hpp"

namespace flutebook::quoting {

struct PieceQuantity {
    answers::RequestAnswer::Quantity answered;
    engine::ClassCosts costs = {};  // of what can be made, with which the first piece of its set is costed
};

/// By order, all of which are of this layout. Throws ModelError, and InputError (request) as cost_sheet().
[[nodiscard]] std::vector<PieceQuantity> quote_piece(const engine::Engine& engine, const geometry::Layout& layout,
                                                     const std::vector<engine::Order>& orders,
                                                     const answers::QuoteOptions& asked);

}  // namespace flutebook::quoting
