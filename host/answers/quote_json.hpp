// The answer to `quote --json`: for scripts, the same keys for every plant, metric whatever people are shown.
//
// {"plant", "currency", "requests": [R...]}, requests in the order asked; one that was refused is not there, its errors
// are on stderr. R = {"request", "quotes": [Q...]}, quotes in the order of the quantities. Where a model was at fault
// R = {"request", "quotes": [], "fault": its sentence}.
//
// Q of a quantity that nothing can make = {"quantity", "refused": [{"candidate", "limit"}...]}, else
// Q = {"quantity", "corrugator", "route": [machine...], "roll_width_mm", "outs", "trim_mm", "ups", "chop_mm",
// "slit_mm",
//   "blank": {"length_mm", "width_mm", "area_m2"}, "board_grammage" (g/m2), "web_length_m", "fed": [...], "good": [...]
//   (by step 0 ... K; fed[0] is null), "mass_kg": {"issued", "adhesive", "product", "loss": {CAUSE: kg}},
//   "lines": [{"plugin", "line", "step", "ply", "class", "behaviour", "quantity", "unit", "rate", "amount"}...],
//   "cost", "cost_per_thousand", "price_per_thousand", "contribution_per_thousand", "waste_cost", "recovery",
//   and for whoever wants to know more:
//   "cost_per_m2", "cost_per_tonne" (shipped), "nx", "ny" (boxes along the chop, across the web), "web_area_m2",
//   "waste_by_step": [{"step", "name", "intake_kg", "loss_kg", "cost"}...],
//   "candidates" (how many ways were costed), "runners_up": [{"candidate", "cost", "dearer_by"}...],
//   with --explain, "explain": [{"quantity", "rate", "figures": [F...]}...], one for each amount of the line}
// F = {"kind" (amount provided fact setting), "name", "where", "value", "unit", "model" (null of a fact), "meaning",
//   "places": ["file:line:column"...], "inputs": [indices into figures]}; figures[0] is the amount.
//
// Steps are counted from 0, the corrugator, to K + 1, dispatch; plies from 0, outside first; "ply" is null but for
// lines by ply. Money is a decimal number with up to 4 places; masses and rates are the shortest decimals that read
// back as the same number. "cost" is the sum of the lines' amounts, exactly.
#pragma once

#include <nlohmann/json_fwd.hpp>

#include "host/answers/quote_answer.hpp"

namespace flutebook::answers {

/// The document with no request in it yet.
[[nodiscard]] nlohmann::ordered_json quote_document(const plant::Plant& plant);

/// R of one answer to what was asked.
[[nodiscard]] nlohmann::ordered_json request_json(const RequestAnswer& answer, const QuoteOptions& asked);

}  // namespace flutebook::answers
