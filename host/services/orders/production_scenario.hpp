// The one way an order was quoted, and, changed step by step, the way it was made: a row that the engine can cost.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "host/engine/engine.hpp"
#include "host/geometry/layout.hpp"
#include "host/orders/order_record.hpp"
#include "host/services/orders/quoted_plant.hpp"

namespace flutebook::services {

/// Owns a copy of the plant and the layout of the order in it. Not moved: its row points into it.
class ProductionScenario {
public:
    /// The way that the order's record tells of, at a quantity. `quoted` and `order` must outlive it. Throws
    /// LedgerError, refused, where the quote's files no longer have that way.
    ProductionScenario(const engine::Engine& engine, const QuotedPlant& quoted, const orders::OrderRecord& order,
                       double quantity);
    ProductionScenario(const ProductionScenario&) = delete;
    ProductionScenario& operator=(const ProductionScenario&) = delete;

    /// A step 0 .. K on this machine of the plant, which was set up so often. Parting and printing stay at the steps
    /// where they were quoted.
    void run_on(std::size_t step, const std::string& machine, double setups);
    /// The web as it was cut; the sheet stays as it is.
    void cut_web(double roll_width_mm, double outs);
    /// Of each ply, money/kg.
    void set_prices(const std::vector<double>& per_kg);

    [[nodiscard]] engine::Row row() const { return {&order_, &candidate_}; }
    [[nodiscard]] const geometry::Layout& layout() const { return layout_; }

private:
    plant::Plant plant_;
    geometry::Layout layout_;
    geometry::Route route_;
    geometry::Candidate candidate_;
    engine::Order order_;
};

}  // namespace flutebook::services
