// An order as it was taken, and its actual cost compared with its quote: the difference by volume, yield, usage and
// price, for each cost line and each material. Plain values with exact arithmetic, since money is whole, and the
// documents that `order --json` and `order cost --json` write.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "host/answers/changed_plugin.hpp"
#include "host/base/date.hpp"
#include "host/contract/model.hpp"
#include "host/orders/order_record.hpp"
#include "ledger/values/money.hpp"

namespace flutebook::answers {

/// Five costs of the same order or input; each replaces one more assumption by what happened.
struct Stages {
    Money quoted;     // the quote
    Money standard;   // the quote's allowance for the boxes that were made
    Money converted;  // converters as they ran, the corrugator as allowed for the sheets that they were fed
    Money used;       // also the corrugator as it ran
    Money paid;       // at the prices of the days it ran

    Stages& operator+=(const Stages& other);
    friend Stages operator-(const Stages& left, const Stages& right);
    friend bool operator==(const Stages&, const Stages&) = default;
};

/// Positive is more expensive. They add up to the cost that was paid less the quoted cost.
struct Variances {
    Money volume;  // another number of boxes than quoted
    Money yield;   // losses of converters above the allowance
    Money usage;   // usage of the corrugator above the allowance
    Money price;   // higher prices of materials

    [[nodiscard]] Money total() const { return volume + yield + usage + price; }
};

[[nodiscard]] Variances variances_of(const Stages& stages);

/// A material; its quantities have one unit, whichever. The intermediate output is what the converters were fed.
struct MaterialInput {
    double quoted;    // the quote's own
    double standard;  // SQ: allowed for the output that was made
    double allowed;   // M: allowed for the intermediate output; with a mix, the standard mix of the actual total
    double used;      // AQ
    double standard_price, actual_price;  // SP, AP
};

/// The amounts of an input, each rounded once, so that
///   yield = (M - SQ) SP,  usage = (AQ - M) SP,  price = AQ (AP - SP).
/// Nothing where an amount is too large for Money.
[[nodiscard]] std::optional<Stages> stages_of(const MaterialInput& input);

/// The machines that ran a step 0 .. K.
struct StepRan {
    struct MachineAmount {
        std::string code;
        double amount;  // metres, or pieces fed
    };
    std::string quoted;
    std::vector<MachineAmount> machines;  // in the order they first ran
    std::string costed;                   // the one with the largest amount, the first of equal ones
    double setups;
};

/// One cost line of the order, the sum of its steps and plies.
struct LineVariance {
    std::string plugin, line, title;
    contract::CostClass cost_class;
    Stages cost;
};

/// A paper of one ply, or the adhesive, in kg and money/kg.
struct InputVariance {
    std::string material;
    std::optional<std::size_t> ply;  // outside first; the adhesive has none
    MaterialInput input;
    Stages cost;
};

/// kg, as allowed for the boxes that were made and as they were. `issued + adhesive = product + losses + floor`.
struct OrderMass {
    struct Masses {
        double issued, adhesive, product;
        std::vector<double> losses;  // as `causes`
        double floor;                // good pieces that were not fed; below zero where more were fed
    };
    struct MassCause {
        std::string cause, title;
    };
    std::vector<MassCause> causes;
    Masses allowed, actual;
};

/// Pieces of a step 0 .. K, as allowed for the boxes that were made and as posted. At the corrugator `fed` is metres
/// and `setup` those of the order change.
struct OrderStep {
    struct StepPieces {
        double fed, setup, good;
    };
    StepRan ran;
    StepPieces allowed, actual;
};

struct OrderCost {
    orders::OrderRecord order;
    std::string request, currency;
    double boxes_made;             // boxes
    std::vector<base::Date> days;  // of production
    Stages cost;                   // of the order, net of recovery
    Money quoted_per_thousand, paid_per_thousand;
    Money saved_cost;  // the cost in the saved quote; `cost.quoted` is computed today
    std::vector<ChangedPlugin> plugins;
    std::vector<OrderStep> steps;
    std::vector<LineVariance> lines;    // in order of the graph; they add up to the cost
    std::vector<InputVariance> inputs;  // papers outside first, then the adhesive
    OrderMass mass;

    [[nodiscard]] bool is_as_quoted() const { return cost.quoted == saved_cost && plugins.empty(); }
    /// The cost less that of the inputs.
    [[nodiscard]] Stages other_cost() const;
};

/// What a set came to: the sum of its pieces, each of which is an order of its own.
struct SetCost {
    std::string number, quote, request, customer, currency;
    double sets;       // ordered
    double sets_made;  // of which every piece was made
    std::vector<base::Date> days;
    Stages cost;
    Money quoted_per_thousand, paid_per_thousand;
    Money saved_cost;
    std::vector<ChangedPlugin> plugins;
    std::vector<OrderCost> pieces;  // in the order of the set

    [[nodiscard]] bool is_as_quoted() const { return cost.quoted == saved_cost && plugins.empty(); }
};

/// An order as it was taken: {"order", "quote", "quantity", "customer", "board", "corrugator", of a board that is
/// bought "bought_from" (the same name), "route"}. A set, one order for each piece: {"order", "quote", "quantity"
/// (sets), "customer", "board", "pieces": [{"order", "piece", "quantity", "corrugator", "route"}...]}.
[[nodiscard]] std::string order_document(const std::vector<orders::OrderRecord>& order);

/// An order's cost: kg, m and money with four decimals, metric for every plant.
///
/// {"order", "quote", "request", "customer", "currency", "quantity": {"quoted", "made"}, "days": [first, last],
///  "cost": STAGES, "variance": VARIANCES, "cost_per_thousand": {"quoted", "actual"},
///  "as_quoted" (no plugin has changed since, and C0 is the saved cost), "saved_cost",
///  "losses_quoted_by" (the model whose losses the quote has, where they are not those of the formulas of a run, by
///  which everything here is expected; else null),
///  "plugins": [{"id", "was", "now"}...] (those that have changed, as in `quote recheck`),
///  "steps": [{"step", "quoted", "ran": {MACHINE: metres or pieces fed}, "costed_as", "setups",
///             "allowed": {"fed", "setup", "good"}, "actual": {"fed", "setup", "good"}}...],
///  "lines": [{"plugin", "line", "class", "cost": STAGES, "variance": VARIANCES}...],
///  "inputs": [{"material", "ply" (null for the adhesive), "kg": {"quoted", "standard", "allowed", "used"},
///              "price": {"standard", "actual"}, "cost": STAGES, "variance": VARIANCES}...],
///  "other_variance": VARIANCES (everything except the inputs),
///  "mass_kg": {"allowed": MASS, "actual": MASS}}
///
/// STAGES = {"quoted", "standard", "converted", "used", "actual"}, the costs C0 to C4: the quote; for the boxes made;
/// with the converters as posted; with the corrugator as posted; at the prices of its days.
/// VARIANCES = {"volume", "yield", "usage", "price", "total"}, positive is more expensive; total = actual - quoted.
/// MASS = {"issued", "adhesive", "product", "loss": {CAUSE: kg}, "floor"}, and issued + adhesive = product + loss +
/// floor; `floor` is the mass of good pieces that were not fed, below zero where more was fed than made.
/// Of the corrugator `fed` is metres of web and `setup` metres of order change; of others both are pieces. In `kg` of
/// an input `standard` is allowed for the boxes made, `allowed` for the good sheets that the corrugator made.
[[nodiscard]] std::string order_cost_document(const OrderCost& answer);

/// A set's cost: {"order", "quote", "request", "customer", "currency", "quantity": {"quoted", "made"} (sets), "days",
/// "cost": STAGES, "variance": VARIANCES (sums of the pieces'), "cost_per_thousand": {"quoted", "actual"}, "as_quoted",
/// "saved_cost", "plugins", "pieces": [the cost of each piece's order, as above, with "piece"...]}. `made` counts the
/// sets of which every piece was made.
[[nodiscard]] std::string set_cost_document(const SetCost& answer);

}  // namespace flutebook::answers
