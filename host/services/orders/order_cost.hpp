// What an order really cost beside what it was quoted at, the use-case faces call: the difference told by volume,
// yield, usage and price, line by line and material by material. Faces show it and compute nothing.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "host/orders/order_record.hpp"
#include "host/plant/plant.hpp"
#include "host/production/order_actual.hpp"
#include "host/services/orders/order_stages.hpp"
#include "host/services/orders/quoted_plant.hpp"
#include "host/services/orders/variance.hpp"
#include "host/services/quoting/changed_plugins.hpp"
#include "ledger/store/store.hpp"

namespace flutebook::services {

/// All that the ledger knows of an order that was made.
struct OrderFile {
    orders::OrderRecord order;
    production::OrderActual actual;
    ledger::SavedQuote quote;
};

/// Reads it as of one moment. Throws LedgerError, refused: there is no such order, or something of it is missing, and
/// what.
[[nodiscard]] OrderFile order_file(const ledger::Store& store, const plant::Plant& today, const std::string& number);

/// The machines, by code, that ran for it.
[[nodiscard]] std::vector<std::string> machines_of(const OrderFile& file);

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

/// Costs an order with models that were started with the quoted plant. Throws as cost_stages().
[[nodiscard]] OrderCost order_cost(const engine::Engine& engine, const QuotedPlant& quoted, const OrderFile& file,
                                   const plant::Plant& today);

/// The whole road: reads the ledger's file, lets go of it, opens the plugins that the plant has today, costs. Throws
/// InputError, ModelError, LedgerError.
[[nodiscard]] OrderCost order_cost(const plant::Plant& today, const std::string& ledger, const std::string& number);

}  // namespace flutebook::services
