// What an order cost beside what it was quoted at: the difference told by volume, yield, usage and price, line by line
// and material by material. Plain values.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "host/answers/changed_plugin.hpp"
#include "host/answers/variance.hpp"
#include "host/base/date.hpp"
#include "host/contract/model.hpp"
#include "host/orders/order_record.hpp"

namespace flutebook::answers {

/// What ran for a step 0 .. K.
struct StepRan {
    struct MachineAmount {
        std::string code;
        double amount;  // metres, or pieces fed
    };
    std::string quoted;
    std::vector<MachineAmount> machines;  // in the order they first ran
    std::string costed;                   // the one that ran the most, the first where two did
    double setups;
};

/// One cost line of the order, all of its steps and plies together.
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
        double floor;                // good pieces that no machine was fed; below zero where it was fed more
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
    std::vector<base::Date> days;  // on which it ran
    Stages cost;                   // of the order, net of recovery
    Money quoted_per_thousand, paid_per_thousand;
    Money saved_cost;  // what the quote said when it was saved; `cost.quoted` is today's
    std::vector<ChangedPlugin> plugins;
    std::vector<OrderStep> steps;
    std::vector<LineVariance> lines;    // in order of the graph; they add up to the cost
    std::vector<InputVariance> inputs;  // papers outside first, then the adhesive
    OrderMass mass;

    [[nodiscard]] bool is_as_quoted() const { return cost.quoted == saved_cost && plugins.empty(); }
    /// What no input tells of: the cost less that of the inputs.
    [[nodiscard]] Stages other_cost() const;
};

}  // namespace flutebook::answers
