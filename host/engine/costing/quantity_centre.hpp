// The cost of waste after ISO 14051:2011, one quantity centre at a time: what a centre's product takes on, and what
// its material loss does.
//
// Materials are traced one by one, each by its own share that is lost; energy and system cost go by mass; waste
// management goes wholly to the loss (allocation: clauses 5.3 and 6.8). Recovery stands beside it, never inside.
#pragma once

#include <cstddef>
#include <vector>

#include "host/engine/engine.hpp"

namespace flutebook::engine {

/// A material's cost, and the share of that material that the centre loses (0 to 1).
struct TracedMaterial {
    double cost, lost_share;
};

/// Costs in money. `lost_share`: mass lost over mass that came in.
struct QuantityCentre {
    std::vector<TracedMaterial> materials;
    double energy = 0, system = 0, waste_management = 0;
    double lost_share = 0;
};

struct Split {
    double product = 0, loss = 0;
};

struct CentreSplit {
    Split material, energy, system, waste_management;

    [[nodiscard]] double product() const {
        return material.product + energy.product + system.product + waste_management.product;
    }
    [[nodiscard]] double loss() const { return material.loss + energy.loss + system.loss + waste_management.loss; }
};

[[nodiscard]] CentreSplit split(const QuantityCentre& centre);

/// One step of a run as a quantity centre: its masses, what its loss cost and what its product carries on.
struct StepCentre {
    double intake_kg, loss_kg;
    double product_cost, loss_cost;
};

/// The steps of a costed run in turn, 0 .. K+1, each carrying on what the last one's product took. At step 0 each
/// ply's paper is lost by its own share, roll ends and all; from step 1 on the board is one material.
[[nodiscard]] std::vector<StepCentre> centres_of(const Graph& graph, const Costing& costing);

}  // namespace flutebook::engine
