// What a set really cost, piece by piece and in all; and the whole road from an order's number, of whatever it is, to
// its cost.
//
// Each piece is costed as an order of its own. What is paid once for a set stands on its first piece, and a late model
// is told there what the other pieces cost at the same stage: so the first piece is costed only with all others.
#pragma once

#include <string>
#include <variant>
#include <vector>

#include "host/month_answers/order_answer.hpp"
#include "host/services/orders/order_cost.hpp"

namespace flutebook::services {

/// The orders of a set, in the order of the set; `quote` is that of each.
[[nodiscard]] answers::SetCost set_cost(const engine::Engine& engine, const saved_quotes::QuotedPlant& quoted,
                                        const std::vector<OrderFile>& files, const plant::Plant& today);

using OrderOrSetCost = std::variant<answers::OrderCost, answers::SetCost>;

/// The cost of an order, of a piece of a set ("N/body") or of a set ("N"): reads the ledger's file as of one moment,
/// lets go of it, opens the plugins that the plant has today, costs. Throws InputError, ModelError, LedgerError.
[[nodiscard]] OrderOrSetCost cost_of(const plant::Plant& today, const std::string& ledger, const std::string& number);

}  // namespace flutebook::services
