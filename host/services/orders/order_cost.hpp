// What an order really cost beside what it was quoted at, the use-case faces call: the difference told by volume,
// yield, usage and price, line by line and material by material. Faces show it and compute nothing.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "host/month_answers/order_answer.hpp"
#include "host/orders/order_record.hpp"
#include "host/plant/plant.hpp"
#include "host/production/order_actual.hpp"
#include "host/saved_quotes/changes.hpp"
#include "host/saved_quotes/saved_workplace.hpp"
#include "host/services/orders/order_stages.hpp"
#include "ledger/store/store.hpp"

namespace flutebook::services {

/// All that the ledger knows of an order that was made.
struct OrderFile {
    orders::OrderRecord order;
    production::OrderActual actual;
    ledger::SavedQuote quote;
};

/// Reads it as of one moment. Throws LedgerError, refused: there is no such order, or something of it is missing, and
/// what.
[[nodiscard]] OrderFile order_file(const ledger::Store& store, const plant::Plant& today, const std::string& number);

/// The machines, by code, that ran for it.
[[nodiscard]] std::vector<std::string> machines_of(const OrderFile& file);

/// Its answer from its five costings, made with models that were started with the quoted plant. Throws InputError
/// (plant) where the quote was made in another currency.
[[nodiscard]] answers::OrderCost order_answer(const engine::Engine& engine, const saved_quotes::QuotedPlant& quoted,
                                              const OrderFile& file, const StageCostings& costings,
                                              const plant::Plant& today);

/// Costs an order with models that were started with the quoted plant. Throws as cost_stages() and order_answer().
[[nodiscard]] answers::OrderCost order_cost(const engine::Engine& engine, const saved_quotes::QuotedPlant& quoted,
                                            const OrderFile& file, const plant::Plant& today);

/// A thousandth part of a cost, of so many boxes. Throws ModelError where it is too large to be kept.
[[nodiscard]] Money cost_per_thousand(Money cost, double boxes);

}  // namespace flutebook::services
