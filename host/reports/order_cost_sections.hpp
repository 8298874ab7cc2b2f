// The sections of an order's cost, top to bottom. Each is text of its own: a heading, then lines that fit the page; the
// sums in it add up as printed.
#pragma once

#include <string>

#include "host/reports/shown_units.hpp"
#include "host/services/orders/order_cost.hpp"

namespace flutebook::reports {

/// Quoted, actual, and the four differences that lead from one to the other.
[[nodiscard]] std::string difference_section(const services::OrderCost& answer);

/// Every line of the cost, quoted and actual, with its share of each difference.
[[nodiscard]] std::string line_variance_section(const services::OrderCost& answer);

/// Each paper and the adhesive: mass allowed and used, price, and what each cost more.
[[nodiscard]] std::string input_section(const ShownUnits& units, const services::OrderCost& answer);

/// Machine by machine what was allowed and what ran.
[[nodiscard]] std::string production_section(const ShownUnits& units, const services::OrderCost& answer);

/// Mass in and out by cause, allowed and actual.
[[nodiscard]] std::string order_mass_section(const ShownUnits& units, const services::OrderCost& answer);

/// "boxes"; "sheets" where sheets are sold as sheets.
[[nodiscard]] std::string pieces_of(const services::OrderCost& answer);

}  // namespace flutebook::reports
