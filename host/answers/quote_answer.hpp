// The answer of a quote: what each quantity of a request costs, with every figure that the cost is computed from. Plain
// values.
#pragma once

#include <algorithm>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "host/answers/price_rules.hpp"
#include "host/answers/strength.hpp"
#include "host/base/place.hpp"
#include "host/blanks/flat.hpp"
#include "host/contract/model.hpp"
#include "host/explain/trail.hpp"
#include "host/geometry/layout.hpp"
#include "host/orders/order_record.hpp"
#include "host/orders/request.hpp"
#include "host/trim_answers/shared_trim.hpp"
#include "ledger/values/money.hpp"

namespace flutebook::answers {

/// Mass in and out, kg. `issued + adhesive = product + sum of losses`.
struct MassBalance {
    struct Cause {
        std::string cause, title;
        std::vector<double> by_step_kg;  // 0 .. K
        double total_kg;
    };
    double issued_kg, adhesive_kg, product_kg;
    std::vector<Cause> losses;  // in the order the model declares them; also those that lost nothing
    double loss_kg;             // sum of the causes

    /// The same waste on two bases that are easily confused: 12 % of output is 10.7 % of input.
    [[nodiscard]] double loss_share_of_issued() const { return loss_kg / issued_kg; }
    [[nodiscard]] double loss_share_of_product() const { return loss_kg / product_kg; }
};

/// One line of the cost sheet at one step, or for one ply.
struct CostLine {
    std::string plugin, line, title, unit;
    contract::CostClass cost_class;
    contract::Behaviour behaviour;
    std::size_t step;
    std::string step_name;           // the machine's code, or "dispatch"
    std::optional<std::size_t> ply;  // outside first
    std::string ply_name;            // the paper's code
    double quantity, rate;
    Money amount;
};

/// What one step's losses cost after ISO 14051, recovery not taken off.
struct StepWaste {
    std::string step_name;
    double intake_kg, loss_kg;
    Money cost;
};

/// A way of making that is asked for in place of the cheapest; what is left empty is free.
struct ForcedWay {
    std::optional<std::string> corrugator = std::nullopt;  // its code
    std::optional<double> roll_width_mm = std::nullopt, ups = std::nullopt;

    [[nodiscard]] bool is_any() const { return corrugator || roll_width_mm || ups; }
};

struct RunnerUp {
    std::string candidate;
    Money cost, dearer_by;
    ForcedWay way = {};                   // its own, of a fresh answer alone: no document keeps it
    std::vector<std::string> route = {};  // likewise
};

/// One number that a model provides, in the model's own unit.
struct ProvidedNumber {
    std::string name;
    contract::Axis axis;
    std::size_t index;  // of its axis, from 0
    std::string unit;
    double value;
};

/// What an order brings: its boxes at their price per thousand, rounded to the currency's minor unit as an invoice is,
/// and what is left of that above the cost.
struct OrderProfit {
    Money order_value, profit;
    double profit_share = 0;  // of the order value; 0 where that is nothing
};

/// Nothing where the order value is too large to be kept.
[[nodiscard]] std::optional<OrderProfit> order_profit(Money price_per_thousand, Money cost, double quantity,
                                                      int minor_units);

/// What a price leaves above the cash that an order costs, which is its per-unit and its per-run cost: a plant's period
/// cost is there without it.
struct CashMargin {
    Money per_run_cost;                     // of the order, whatever its quantity
    Money price_less_cash_per_thousand;     // the price less the per-unit and the per-run cost of a thousand
    std::optional<double> break_even = {};  // the least quantity that earns its cash at this price, each piece at its
                                            // per-unit cost here; nothing where none does
};

/// What an order may need and its price leaves out: a line that charges nothing for want of a number that the request
/// could have given, or what a model says is invoiced apart.
struct NotInPrice {
    std::string plugin, line;
    std::string title;                   // of the line
    std::optional<std::string> setting;  // the number that the request does not give; of another model, MODEL.SETTING
    std::string meaning;                 // of the setting
    std::optional<Money> amount;         // where it is known: what is invoiced apart
    double colours = 0;                  // that are printed, where it is they that it would be charged for
};

/// One quantity, made the cheapest way: of boxes, or of one piece of a set, which has no price.
struct Quote : orders::SheetCut {
    double quantity;
    std::string corrugator;  // or who delivers its board
    bool is_bought = false;  // its board, as sheets
    std::vector<std::string> route;
    double trim_mm, nx, ny;  // boxes along the chop, across the web
    blanks::Blank blank;
    double board_grammage_gsm;
    double web_length_m, web_area_m2;
    std::vector<double> fed, good;      // by step 0 .. K; fed[0] has no meaning
    std::vector<double> machine_hours;  // by step 0 .. K, setup and run; empty where no model says how long a run takes
    MassBalance mass;
    std::vector<CostLine> lines;  // in order of step, then graph, then ply; without those that charge nothing
    Money cost;                   // sum of the lines, net of recovery
    Money cost_per_thousand, price_per_thousand, contribution_per_thousand;  // price and contribution 0 of a piece
    OrderProfit sale;                                                        // nothing of a piece
    std::optional<CashMargin> cash;  // nothing of a piece, and where it is not known: in old documents
    PriceMaking making = {};
    std::optional<std::vector<NotInPrice>> not_in_price;  // nothing where it is not known: in old documents
    Money cost_per_m2;                                    // per m2 shipped
    Money cost_per_tonne;                                 // per tonne shipped
    Money waste_cost;                                     // ISO 14051, all steps
    std::vector<StepWaste> waste_by_step;
    Money recovery;                    // revenue of the scrap, as a positive amount
    std::size_t candidates;            // how many ways were costed
    std::vector<RunnerUp> runners_up;  // the next three, cheapest first
    orders::OrderRecord terms;         // what an order's production is measured against; gets its number with the order
    std::vector<explain::Trail> trails;           // of the figure that was asked to be explained
    std::vector<ProvidedNumber> provided;         // by the model that was asked for
    std::vector<explain::TouchedNumber> touched;  // where it was asked for
};

/// The machine that an order keeps busy for longest.
struct BusiestMachine {
    std::string name;
    double hours;
};

/// Of a box, or of all pieces of a set; nothing where the hours are not known, or there are none.
[[nodiscard]] std::optional<BusiestMachine> busiest_machine(const std::vector<const Quote*>& pieces);

/// A quantity that cannot be made.
struct Unmakeable {
    double quantity;
    std::vector<geometry::Refused> refused;
};

/// One quantity of a set, each piece of which is made the cheapest way.
struct SetQuote {
    double quantity;  // sets
    Money cost;       // the sum of the pieces', net of recovery
    Money cost_per_thousand, price_per_thousand, contribution_per_thousand;
    Money waste_cost, recovery;  // sums of the pieces'
    OrderProfit sale = {};
    PriceMaking making = {};
    std::optional<std::vector<NotInPrice>> not_in_price = std::nullopt;  // each once, amounts added up
    std::optional<CashMargin> cash = std::nullopt;
};

/// One request's answer.
struct RequestAnswer {
    orders::Request request;
    /// One of the three: `set` of a set, `quote` of boxes and of one piece of a set, `unmakeable` of either.
    struct Quantity {
        std::optional<Quote> quote;
        std::optional<Unmakeable> unmakeable;
        std::optional<SetQuote> set = std::nullopt;

        [[nodiscard]] bool is_makeable() const { return quote || set; }
        [[nodiscard]] double quantity() const {
            return quote ? quote->quantity : set ? set->quantity : unmakeable->quantity;
        }
    };
    std::vector<Quantity> quantities;
    /// One blank of a set. Its quantities are those of the request times its count; where a quantity of the set cannot
    /// be made, each piece has its own limits, none where that piece could be made.
    struct Piece {
        std::string name;
        double count;  // to one set
        std::vector<Quantity> quantities;
    };
    /// What a plugin did wrong, if one did. `quantities` is then empty.
    std::optional<std::string> model_fault = std::nullopt;
    std::vector<base::Warning> warnings = {};
    std::vector<Piece> pieces = {};                     // empty of a box of one piece
    std::optional<trim_answers::SharedTrim> trim = {};  // nothing where each order pays its own roll
    std::vector<blanks::FlatBlank> drawn = {};          // each blank as it lies, where drawings were asked for
    std::string not_drawn = {};  // a sentence: why blanks that were asked for are not there; else empty
    OfferTerms terms = {};
    std::optional<Approval> approval = std::nullopt;  // of a quote that is kept with one
    std::optional<Strength> strength = std::nullopt;  // of a slotted box on a board whose ECT is known

    [[nodiscard]] bool is_complete() const {
        return !model_fault && std::all_of(quantities.begin(), quantities.end(),
                                           [](const Quantity& quantity) { return quantity.is_makeable(); });
    }
};

struct QuoteOptions {
    unsigned threads = 1;                                // changes the time, not the answer
    std::optional<std::string> explain;                  // a figure, `price`, or one at one quantity, `price@500`
    std::optional<std::string> provided = std::nullopt;  // a model whose numbers are shown; no saved quote keeps them
    bool has_drawings = false;                           // blanks are drawn for a page; no document keeps them
    ForcedWay way = {};                                  // no saved quote has one
    bool has_alone = true;        // what an order that pays a share of its web would cost alone is worked out as well
    bool has_touched = false;     // the numbers behind each quote are named; likewise
    bool is_price_given = false;  // the request's margin is what a price that is asked for leaves; likewise
};

/// `price@500`, taken apart.
struct FigureAsked {
    std::string name;
    std::optional<double> quantity;  // nothing where none is named, or what is named is no number
    std::string behind;              // the sign, as it was written
};
[[nodiscard]] FigureAsked figure_asked(const std::string& text);

/// Whether a figure is to be explained at this quantity of the request.
[[nodiscard]] bool explains_at(const QuoteOptions& asked, double quantity);

}  // namespace flutebook::answers
