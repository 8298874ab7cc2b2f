// An order's cost for scripts: kg, m and money to its four places, metric for every plant.
//
// {"order", "quote", "request", "customer", "currency", "quantity": {"quoted", "made"}, "days": [first, last],
//  "cost": STAGES, "variance": VARIANCES, "cost_per_thousand": {"quoted", "actual"},
//  "as_quoted" (no plugin changed since, and C0 is the cost that was saved), "saved_cost",
//  "plugins": [{"id", "was", "now"}...] (those that are others now, as `quote recheck` has them),
//  "steps": [{"step", "quoted", "ran": {MACHINE: metres or pieces fed}, "costed_as", "setups",
//             "allowed": {"fed", "setup", "good"}, "actual": {"fed", "setup", "good"}}...],
//  "lines": [{"plugin", "line", "class", "cost": STAGES, "variance": VARIANCES}...],
//  "inputs": [{"material", "ply" (null for the adhesive), "kg": {"quoted", "standard", "allowed", "used"},
//              "price": {"standard", "actual"}, "cost": STAGES, "variance": VARIANCES}...],
//  "other_variance": VARIANCES (all that is no input's),
//  "mass_kg": {"allowed": MASS, "actual": MASS}}
//
// STAGES = {"quoted", "standard", "converted", "used", "actual"}, the costs C0 to C4: the quote; for the boxes made;
// with the converters as posted; with the corrugator as posted; at the prices of its days.
// VARIANCES = {"volume", "yield", "usage", "price", "total"}, positive is dearer; total = actual - quoted.
// MASS = {"issued", "adhesive", "product", "loss": {CAUSE: kg}, "floor"}, and issued + adhesive = product + loss +
// floor; `floor` is what good pieces were never fed on, below zero where a machine was fed more than was made.
// Of the corrugator `fed` is metres of web and `setup` metres of order change; of others both are pieces. In `kg` of an
// input `standard` is allowed for the boxes made, `allowed` for the good sheets that the corrugator made.
#pragma once

#include "host/answers/json_text.hpp"
#include "host/answers/order_cost_answer.hpp"

namespace flutebook::answers {

[[nodiscard]] Json order_cost_json(const OrderCost& answer);

}  // namespace flutebook::answers
