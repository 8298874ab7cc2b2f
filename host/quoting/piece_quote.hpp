// One blank of a request, the box of one piece or a piece of a set, at each of its quantities: made the cheapest way.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include "host/answers/quote_answer.hpp"
#include "host/engine/engine.hpp"
#include "host/geometry/layout.hpp"
#include "host/quoting/explained_figure.hpp"

namespace flutebook::quoting {

struct PieceQuantity {
    answers::RequestAnswer::Quantity answered;
    engine::ClassCosts costs = {};  // of what can be made, with which the first piece of its set is costed
};

/// The ways that were costed, as their indices, the cheapest first; among equals the one that is cheaper before late
/// models charge, then the first. No more than the cheapest and those shown beside it are in order.
[[nodiscard]] std::vector<std::size_t> ways_by_cost(std::span<const engine::Outcome> outcomes);

/// By order, all of which are of this layout. `explained` counts pieces, as the orders do. Throws ModelError, and
/// InputError (request) as cost_sheet().
[[nodiscard]] std::vector<PieceQuantity> quote_piece(const engine::Engine& engine, const geometry::Layout& layout,
                                                     const std::vector<engine::Order>& orders,
                                                     const answers::QuoteOptions& asked,
                                                     const std::optional<ExplainedFigure>& explained = {});

}  // namespace flutebook::quoting
