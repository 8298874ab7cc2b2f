// One order in one way of making it, with everything in which that differs from its quote: a row that the engine costs.
// The five costings of an order that was made are five scenarios; a "what if" is one more.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "host/engine/engine.hpp"
#include "host/geometry/layout.hpp"
#include "host/orders/order_record.hpp"
#include "host/scenario/plant_overrides.hpp"

namespace flutebook::scenario {

/// A machine, by its code, that works a step 0 .. K in place of the quoted one. Parting and printing stay at the steps
/// where they were quoted.
struct StepMachine {
    std::size_t step;
    std::string code;
};

/// The web as it is cut; the sheet stays as it is.
struct WebOverride {
    double roll_width_mm, outs;
};

/// Everything in which a scenario differs from the quote. What is left empty stays as it was quoted. A value.
struct Overrides {
    double quantity;
    PlantOverrides plant{};
    std::vector<StepMachine> machines{};
    std::optional<WebOverride> web{};
    std::optional<plant::TrimPolicy> trim{};
    std::optional<engine::MeasuredRun> run{};  // takes the place of the run that the models would lay out
    engine::ClassCosts others{};               // of the first piece of a set: what its other pieces cost
};

/// What was quoted, and the way that was chosen for it. Refers to all of it.
struct Quoted {
    const plant::Plant& plant;
    const orders::Request& request;
    const orders::OrderRecord& order;
};

/// Constant; owns its plant and its layout. Not moved: its row points into it.
class Scenario {
public:
    /// `engine` was started with the quoted plant; it and `quoted` must outlive the scenario. Throws LedgerError,
    /// refused, where the quote's files no longer lead to the way that the order's record tells of, and as with().
    Scenario(const engine::Engine& engine, const Quoted& quoted, Overrides overrides);
    Scenario(const Scenario&) = delete;
    Scenario& operator=(const Scenario&) = delete;

    [[nodiscard]] engine::Row row() const { return {&order_, &candidate_}; }
    [[nodiscard]] const geometry::Layout& layout() const { return layout_; }
    /// Throws ModelError, and LedgerError, refused, where a model refuses the row.
    [[nodiscard]] engine::Costing cost() const;

private:
    const engine::Engine& engine_;
    std::optional<engine::MeasuredRun> run_;
    std::string number_;
    plant::Plant plant_;
    engine::PieceOfSet piece_;
    geometry::Layout layout_;
    geometry::Route route_;
    geometry::Candidate candidate_;
    engine::Order order_;
};

}  // namespace flutebook::scenario
