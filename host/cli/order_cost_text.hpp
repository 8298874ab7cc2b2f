// An order's cost on a page: quoted against actual, where the difference comes from, and what lies behind it.
#pragma once

#include <string>

#include "host/catalogue/plant.hpp"
#include "host/desk/order_cost.hpp"

namespace flutebook::cli {

/// In the units that the plant's people read.
[[nodiscard]] std::string order_cost_text(const catalogue::Plant& plant, const desk::OrderCost& answer);

}  // namespace flutebook::cli
