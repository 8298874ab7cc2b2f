// The document that `quote --json` writes and that a saved quote keeps: the same keys for every plant, always in metric
// units. It is written and read in this room only.
//
// {"answer": "quote", "answer_version", "plant", "currency", "currency_decimals", "units" (metric us),
// "warnings": [W...] (about the plant's files), "requests": [R...]}, requests in the order asked, without those that
// were refused: their errors are on standard error.
// R = {"request", "quotes": [Q...], "warnings": [W...], "page": P}, quotes in the order of the quantities, and with
// --save "saved" (the quote's number in the ledger); of an enquiry in a line "understood" (what it was read as, which
// no saved quote keeps). Where a model failed there is no quote but "fault", its message.
// Where the plant or the request says it, R has "valid_until" (a day), "tolerance": {"under", "over" (shares of the
// quantity), "at"}, and a quote that was kept with somebody's approval "approval": {"by", "below" (the limit of the
// profit share), "at"}. "strength": see answers/strength, of a slotted box on a board whose ECT is known. W = {"at"
// (file:line:column), "text"}: what is doubtful and stops nothing. Earlier releases of version 1 have none.
//
// Q of a quantity that cannot be made = {"quantity", "refused": [{"candidate", "limit"}...]}, else
// Q = {"quantity", "corrugator" (or who delivers the board as sheets, then in "bought_from" too), "route":
//   [machine...], "roll_width_mm" (of bought sheets their width), "outs", "trim_mm", "ups", "chop_mm", "slit_mm",
//   "blank": {"length_mm", "width_mm", "area_m2"}, "board_grammage" (g/m2), "web_length_m", "fed": [...], "good": [...]
//   (by step 0 ... K; fed[0] is null), "mass_kg": {"issued", "adhesive", "product", "loss": {CAUSE: kg}},
//   "lines": [{"plugin", "line", "step", "ply", "class", "behaviour", "quantity", "unit", "rate", "amount"}...],
//   "cost", "cost_per_thousand", "price_per_thousand", "contribution_per_thousand", "waste_cost", "recovery",
//   and further details:
//   "cost_per_m2", "cost_per_tonne" (shipped), "nx", "ny" (boxes along the chop, across the web), "web_area_m2",
//   "waste_by_step": [{"step", "name", "intake_kg", "loss_kg", "cost"}...],
//   "candidates" (how many ways were costed), "runners_up": [{"candidate", "cost", "dearer_by"}...],
//   "losses": [{"cause", "title", "kg_by_step": [...]}...], "line_titles": [{"title", "place", "paper"}...] (by line),
//   "order_value" (quantity times price, rounded to the currency's minor unit as an invoice is), "profit" (order value
//   less cost), "profit_share" (of the order value),
//   "price_rules": [{"rule" (request-margin customer-margin quantity-margin round-up least-order), "value" (the margin,
//   the multiple, the least order), "at", "price_per_thousand" (after it)}...], those that made the price in turn;
//   where the plant has one "second_currency": {"code", "decimals", "rate", "price_per_thousand", "order_value"},
//   "not_in_price": [N...], "machine_hours": [...] (by step 0 ... K, setup and run; null where no model says),
//   "per_run_cost" (of the order), "price_less_cash_per_thousand" (the price less per-unit and per-run cost; the
//   contribution is the price less per-unit cost alone), "break_even_quantity" (the least that earns both at this
//   price; null where none does),
//   with --explain, "explain": [{"quantity", "rate" (null but of a line), "figures": [F...]}...], one for each place of
//   the figure, none at another quantity than the one that was asked for,
//   with --provided, "provided": [{"name", "step", "ply", "value", "unit"}...], the numbers that the model provides}
// A request of a set has "pieces": [{"piece", "count", "quotes": [Q...]}...], Q by quantity of the set, each of the
// sets times "count", without price and what follows from it. Its own "quotes" are then {"quantity"
// (sets), "cost" (the sum of the pieces'), "cost_per_thousand", "price_per_thousand", "contribution_per_thousand",
// "waste_cost", "recovery", "order_value", "profit", "profit_share", "price_rules", "second_currency", "not_in_price",
// "per_run_cost", "price_less_cash_per_thousand", "break_even_quantity"}, or {"quantity", "refused"}: then the pieces'
// are too, with no limits where that piece could be made.
//
// N = {"plugin", "line" (that charges nothing), "setting" (the number that the request does not give; null of what it
//   leaves to be invoiced apart), "amount" (what is invoiced apart; null where nobody knows it), "title", "meaning" (of
//   the setting), "colours" (that are printed, where it is they that would be charged for, else 0)}
//
// F = {"kind" (amount provided fact setting formula), "name", "where", "value", "unit", "model" (null of a fact and of
// a
//   formula), "meaning", "places": ["file:line:column"...], "inputs": [indices into figures], "charge": {"quantity",
//   "unit", "rate"} (of an amount, else null), "choice" (what the number stands for, where it is a choice, else null)};
//   figures[0] is the figure that was asked for. Earlier releases of version 1 have no "charge" and no "choice".
//
// P, what a printed page shows besides = {"customer", "date", "style", "board", "inside_mm": [...], "outside_mm":
//   [...] (null where the request has none), "colours", "margin" (null where the plant's counts), "explained" (the
//   figure, or null), "converters": [{"code", "kind" (as machines.yaml spells it)}...] of the routes, and where a way
//   was asked for "asked_way": {"corrugator", "roll_width_mm", "ups"}, null where any would do; "bought_from" as in Q}
//
// Version 0, which release 1.0.0 wrote, has no name, no version, no P, no "losses" and no "line_titles"; all other keys
// are the same. What saved quotes of earlier releases of version 1 lack of Q follows from the rest, or is not known.
//
// Steps are counted from 0, the corrugator, to K + 1, dispatch; plies from 0, outside first; "ply" is null except in
// lines by ply. Money is a decimal number with up to 4 places; masses and rates are the shortest decimals that read
// back as the same number. "cost" is the sum of the lines' amounts, exactly.
#pragma once

#include <string>

#include "host/answers/json_text.hpp"
#include "host/answers/quote_answer.hpp"

namespace flutebook::answers {

/// One request's answer and everything that its page shows. Of the plant it holds the name, the currency and its
/// decimals, the units, the request's board and the kinds of the converters; of the request, what P holds; no terms of
/// orders.
struct QuoteDocument {
    int version;
    plant::Plant plant;
    RequestAnswer answer;
    QuoteOptions asked;
};

/// The document of many requests, written answer by answer: what begin(), add() and end() return is its text, in that
/// order. `plant` must outlive it.
class QuoteStream {
public:
    /// `warnings` are those of the plant's files.
    QuoteStream(const plant::Plant& plant, const std::vector<base::Warning>& warnings, QuoteOptions asked);

    [[nodiscard]] const std::string& begin() const { return list_.begin(); }
    /// R of one answer. `saved` is the quote's number in the ledger; empty where it is not stored. `understood` is what
    /// an enquiry in a line was read as; empty of a request that came from elsewhere.
    [[nodiscard]] std::string add(const RequestAnswer& answer, const std::string& saved,
                                  const std::string& understood = "");
    [[nodiscard]] std::string end() const { return list_.end(); }

private:
    const plant::Plant& plant_;
    QuoteOptions asked_;
    JsonListStream list_;
};

/// The document of one request.
[[nodiscard]] std::string quote_text(const plant::Plant& plant, const RequestAnswer& answer, const QuoteOptions& asked);

/// Reads a document of one request. Each message begins with `where`. Throws LedgerError (unfit) for a version that
/// this program does not know, and for a text that is not such a document.
[[nodiscard]] QuoteDocument read_quote(const std::string& where, const std::string& text);

}  // namespace flutebook::answers
