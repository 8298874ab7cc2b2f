// The answer to `quote --json`, and what a saved quote keeps: the same keys for every plant, metric whatever people are
// shown. Written and read here only.
//
// {"answer": "quote", "answer_version", "plant", "currency", "currency_decimals", "units" (metric us),
// "requests": [R...]}, requests in the order asked; one that was refused is not there, its errors
// are on stderr. R = {"request", "quotes": [Q...], "page": P}, quotes in the order of the quantities. Where a model was
// at fault R = {"request", "quotes": [], "fault": its sentence}.
//
// Q of a quantity that nothing can make = {"quantity", "refused": [{"candidate", "limit"}...]}, else
// Q = {"quantity", "corrugator", "route": [machine...], "roll_width_mm", "outs", "trim_mm", "ups", "chop_mm",
// "slit_mm",
//   "blank": {"length_mm", "width_mm", "area_m2"}, "board_grammage" (g/m2), "web_length_m", "fed": [...], "good": [...]
//   (by step 0 ... K; fed[0] is null), "mass_kg": {"issued", "adhesive", "product", "loss": {CAUSE: kg}},
//   "lines": [{"plugin", "line", "step", "ply", "class", "behaviour", "quantity", "unit", "rate", "amount"}...],
//   "cost", "cost_per_thousand", "price_per_thousand", "contribution_per_thousand", "waste_cost", "recovery",
//   and for readers who want to know more:
//   "cost_per_m2", "cost_per_tonne" (shipped), "nx", "ny" (boxes along the chop, across the web), "web_area_m2",
//   "waste_by_step": [{"step", "name", "intake_kg", "loss_kg", "cost"}...],
//   "candidates" (how many ways were costed), "runners_up": [{"candidate", "cost", "dearer_by"}...],
//   "losses": [{"cause", "title", "kg_by_step": [...]}...], "line_titles": [{"title", "place", "paper"}...] (by line),
//   with --explain, "explain": [{"quantity", "rate", "figures": [F...]}...], one for each amount of the line}
// F = {"kind" (amount provided fact setting), "name", "where", "value", "unit", "model" (null of a fact), "meaning",
//   "places": ["file:line:column"...], "inputs": [indices into figures]}; figures[0] is the amount.
//
// P, what a page for people says besides = {"customer", "date", "style", "board", "inside_mm": [...], "outside_mm":
//   [...] (null where the request has none), "colours", "margin", "explained" (the line, or null),
//   "converters": [{"code", "kind" (printer, die-cutter, folder-gluer)}...] of the routes}
//
// Version 0, which the release 1.0.0 wrote, has neither a name nor a version, and nothing that is named in P, "losses"
// and "line_titles"; all other keys are the same.
//
// Steps are counted from 0, the corrugator, to K + 1, dispatch; plies from 0, outside first; "ply" is null but for
// lines by ply. Money is a decimal number with up to 4 places; masses and rates are the shortest decimals that read
// back as the same number. "cost" is the sum of the lines' amounts, exactly.
#pragma once

#include <string>

#include "host/answers/json_text.hpp"
#include "host/answers/quote_answer.hpp"

namespace flutebook::answers {

/// One request's answer and all that its page says. Of the plant it has the name, the currency and its coin, the units,
/// the request's board and the kinds of the converters; of the request what P holds. The terms of orders are not in it.
struct QuoteDocument {
    int version;
    plant::Plant plant;
    RequestAnswer answer;
    QuoteOptions asked;
};

/// The document with no request in it yet.
[[nodiscard]] Json quote_document(const plant::Plant& plant);

/// R of one answer to what was asked.
[[nodiscard]] Json request_json(const plant::Plant& plant, const RequestAnswer& answer, const QuoteOptions& asked);

/// The document of this request alone.
[[nodiscard]] std::string quote_text(const plant::Plant& plant, const RequestAnswer& answer, const QuoteOptions& asked);

/// Reads a document with one request. `where` begins each message. Throws LedgerError, unfit, for a version that this
/// program does not know, and for a text that is no such document.
[[nodiscard]] QuoteDocument read_quote(const std::string& where, const std::string& text);

}  // namespace flutebook::answers
