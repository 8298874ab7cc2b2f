// The terms of an order, fixed when it is quoted: its layout, and what every machine of the plant may lose on it.
#pragma once

#include "host/engine/engine.hpp"
#include "host/orders/order_record.hpp"

namespace flutebook::services {

/// Of a costed row, its quote and order not yet numbered. The machines of its own route have the allowances that the
/// quote was costed with, those of a preferred model among them; every other machine has its own.
[[nodiscard]] orders::OrderRecord terms_of(const engine::Engine& engine, const engine::Row& row,
                                           const engine::Costing& costing);

}  // namespace flutebook::services
