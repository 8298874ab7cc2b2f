// The yard of the demo plant: scrap into bales, bales onto lorries, and what the mill answered; and the month's bills.
#pragma once

#include "config/demo/history/documents.hpp"
#include "config/demo/history/draws.hpp"
#include "config/demo/history/floor.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::demo {

/// Stock when the ledger begins, kg.
inline constexpr double opening_scrap_kg = 1840;
inline constexpr double opening_bales_kg = 1530;

/// Bales, tickets, returns, and the counts at the year's end. Takes what the floor left behind.
void write_yard(const plant::Plant& plant, const Traces& traces, Documents& documents, Draws& draws);

/// What each machine and the baler cost in each month.
void write_costs(const plant::Plant& plant, const Traces& traces, Documents& documents, Draws& draws);

}  // namespace flutebook::demo
