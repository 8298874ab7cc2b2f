// From what a thing costs to what is asked for it.
#pragma once

#include <optional>

#include "ledger/values/money.hpp"

namespace flutebook::services {

/// cost / (1 - margin), rounded half away from zero to the currency's minor unit. The margin is a share of the price,
/// not of the cost: 25 % of the price is a third on top of the cost. Nothing where the price is too large to be kept.
[[nodiscard]] std::optional<Money> price(double cost, double margin, int minor_units);

}  // namespace flutebook::services
