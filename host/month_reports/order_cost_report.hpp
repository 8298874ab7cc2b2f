// An order's cost: quoted against actual, where the difference comes from, and what lies behind it.
#pragma once

#include "host/month_answers/order_answer.hpp"
#include "host/plant/plant.hpp"
#include "host/render/report.hpp"

namespace flutebook::month_reports {

/// In the units that the plant's people read: quoted, actual and the four differences that lead from one to the other;
/// every line; each paper and the adhesive; machine by machine what was allowed and what ran; mass by cause.
[[nodiscard]] render::Report order_cost_report(const plant::Plant& plant, const answers::OrderCost& answer);

/// A set's cost: the sum of its pieces first, then each piece as an order has it.
[[nodiscard]] render::Report set_cost_report(const plant::Plant& plant, const answers::SetCost& answer);

}  // namespace flutebook::month_reports
