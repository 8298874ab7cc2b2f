// From a costed row to the quote that is shown: masses by cause, lines with their amounts, unit costs and price.
// From what a thing costs to what is asked for it.
#pragma once

#include <optional>

#include "host/engine/engine.hpp"
#include "host/services/quoting/quote.hpp"
#include "ledger/values/money.hpp"

namespace flutebook::services {

/// Throws ModelError where a unit cost is too large to be kept.
[[nodiscard]] answers::Quote cost_sheet(const engine::Engine& engine, const engine::Row& row,
                                        const engine::Costing& costing);

/// cost / (1 - margin), rounded half away from zero to the currency's minor unit. The margin is a share of the price,
/// not of the cost: 25 % of the price is a third on top of the cost. Nothing where the price is too large to be kept.
[[nodiscard]] std::optional<Money> price(double cost, double margin, int minor_units);

}  // namespace flutebook::services
