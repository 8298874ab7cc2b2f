// From a costed row to the quote that is shown: masses by cause, lines with their amounts, unit costs and price.
#pragma once

#include "host/engine/engine.hpp"
#include "host/services/quoting/quote.hpp"

namespace flutebook::services {

/// Throws ModelError where a unit cost is too large to be kept.
[[nodiscard]] answers::Quote cost_sheet(const engine::Engine& engine, const engine::Row& row,
                                        const engine::Costing& costing);

}  // namespace flutebook::services
