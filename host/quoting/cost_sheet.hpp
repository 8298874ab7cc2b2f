// From a costed row to the quote that is shown: masses by cause, lines with their amounts, unit costs and price; and a
// check that these amounts make sense.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "host/engine/engine.hpp"
#include "host/quoting/quote.hpp"
#include "ledger/values/money.hpp"

namespace flutebook::quoting {

/// Of one piece of a set without a price. Throws InputError (request) where a unit cost is too large to be kept, the
/// boxes have no mass, or their price is below zero.
[[nodiscard]] answers::Quote cost_sheet(const engine::Engine& engine, const engine::Row& row,
                                        const engine::Costing& costing);

/// The sum of a set's pieces, and its price, which is rounded once, from that sum. Throws as cost_sheet().
[[nodiscard]] answers::SetQuote set_sheet(const plant::Plant& plant, const orders::Request& request, double sets,
                                          const std::vector<const answers::Quote*>& pieces);

/// The price of a thousand less the per-unit cost of a thousand. `per_unit_cost` is that of the order and is divided
/// unrounded; the result is rounded once, half away from zero, to 1/10000.
[[nodiscard]] Money contribution(Money price_per_thousand, Money per_unit_cost, std::int64_t quantity);

/// The least whole quantity at which the price pays the per-unit cost of each and the per-run cost of all; nothing
/// where the price does not pay the per-unit cost. The costs are those of an order of `quantity`.
[[nodiscard]] std::optional<double> break_even(Money price_per_thousand, Money per_unit_cost, Money per_run_cost,
                                               std::int64_t quantity);

/// Where the price is below the cost: the margin is too low, or the price that was asked for.
[[nodiscard]] std::optional<base::Warning> price_warning(const plant::Plant& plant, const orders::Request& request,
                                                         const answers::RequestAnswer::Quantity& quantity,
                                                         const answers::QuoteOptions& asked);

/// cost / (1 - margin), rounded half away from zero to the currency's minor unit. The margin is a share of the price,
/// not of the cost: 25 % of the price is a third on top of the cost. Nothing where the price is too large to be kept.
[[nodiscard]] std::optional<Money> price(double cost, double margin, int minor_units);

}  // namespace flutebook::quoting
