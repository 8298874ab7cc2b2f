// The terms of an order, fixed when it is quoted: its layout, and what every machine of the plant may lose on it. And
// which cost lines are those of a material: what the papers and the adhesive of an order cost.
#pragma once

#include <cstddef>

#include "host/engine/engine.hpp"
#include "host/orders/order_record.hpp"

namespace flutebook::quoting {

/// Of a costed row, its quote and order not yet numbered. The machines of its own route have the allowances that the
/// quote was costed with, those of a preferred model among them; every other machine has its own.
[[nodiscard]] orders::OrderRecord terms_of(const engine::Engine& engine, const engine::Row& row,
                                           const engine::Costing& costing);

/// Charged as material for this ply.
[[nodiscard]] bool is_of_ply(const engine::Graph& graph, const engine::LineAmount& line, std::size_t ply);

/// Charged as material where the adhesive is applied, by a model that needs the adhesive.
[[nodiscard]] bool is_of_adhesive(const engine::Graph& graph, const engine::LineAmount& line);

}  // namespace flutebook::quoting
