// Orders: the list of those that were taken, and what one really cost beside what it was quoted at.
#pragma once

#include <string>

#include "host/month_answers/order_answer.hpp"
#include "host/month_answers/order_list.hpp"
#include "host/pages/frame.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::pages {

/// GET /orders?page=.
[[nodiscard]] std::string order_list_page(const Frame& frame, const answers::OrderList& list);

/// From quoted to actual by volume, yield, usage and price, as a waterfall, then every line and material. GET
/// /orders/2610-02/cost.
[[nodiscard]] std::string order_cost_page(const Frame& frame, const plant::Plant& plant,
                                          const answers::OrderCost& order);
/// The same of a set: the sum of its pieces, then each of them.
[[nodiscard]] std::string order_cost_page(const Frame& frame, const plant::Plant& plant, const answers::SetCost& set);

}  // namespace flutebook::pages
