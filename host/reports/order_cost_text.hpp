// An order's cost on a page: quoted against actual, where the difference comes from, and what lies behind it.
#pragma once

#include <string>

#include "host/plant/plant.hpp"
#include "host/services/orders/order_cost.hpp"

namespace flutebook::reports {

/// In the units that the plant's people read.
[[nodiscard]] std::string order_cost_text(const plant::Plant& plant, const services::OrderCost& answer);

}  // namespace flutebook::reports
