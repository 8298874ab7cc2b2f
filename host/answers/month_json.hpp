// A month's account for scripts: kg to the gram, money to its four places, metric for every plant.
//
// {"month", "issued_kg", "adhesive_kg", "product_kg", "loss_kg": {CAUSE}, "expected_kg": {CAUSE},
//  "unexplained_kg": {CENTRE}, "centre_kg": {MACHINE: {"open", "in", "out", "close"}},
//  "floor_kg": {"open", "made", "fed", "returned", "counted", "close"},
//  "loose_scrap_kg": {"open", "made", "baled", "counted", "close"},
//  "bale_yard_kg": {"open", "baled", "sent", "counted", "close"}, "sent_kg", "paid_kg", "revenue",
//  "waste_cost": {CAUSE, "unexplained", "idle"}, "product_cost", "floor_cost": {"open", "close"},
//  "recycling_rate" (null where no scrap was made)}
// and with --by: "by", "parts": [{"of", "issued_kg", "made_kg", "fed_kg", "product_kg", "loss_kg": {CAUSE},
//  "expected_kg": {CAUSE}}...].
//
// `counted` is what counts found more than the books said; `unexplained_kg` of the floor is the same with the other
// sign. Scrap weighed off the floor is among the losses: floor close = open + made - fed + returned + counted - that.
#pragma once

#include "host/answers/json_text.hpp"
#include "host/answers/month_answer.hpp"

namespace flutebook::answers {

[[nodiscard]] Json month_json(const MonthAnswer& answer);

/// "2026-10".
[[nodiscard]] std::string month_name(ledger::Month month);
/// "machine", "shift", "board", "order".
[[nodiscard]] const char* axis_name(ledger::Axis axis);

}  // namespace flutebook::answers
