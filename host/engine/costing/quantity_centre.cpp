#include "host/engine/costing/quantity_centre.hpp"

#include <numeric>

namespace flutebook::engine {
namespace {

Split by_share(double cost, double lost_share) {
    return {cost * (1 - lost_share), cost * lost_share};
}

double sum(const std::vector<double>& values) {
    return std::accumulate(values.begin(), values.end(), 0.0);
}

double ratio(double part, double whole) {
    return whole > 0 ? part / whole : 0;
}

// The share that a step loses of a material, by how the material comes in.
struct LostShares {
    double paper, board;
};

LostShares shares_at_corrugator(const Graph& graph, const Costing& costing, double lost_kg) {
    double roll_ends = 0;
    for (std::size_t c = 0; c < costing.losses.size(); ++c)
        if (graph.models[graph.shedder].losses[c].cause == "roll-ends") roll_ends = costing.losses[c][0];
    const double issued = sum(costing.issued_kg);
    const double roll_loss = ratio(roll_ends, issued);
    const double board = ratio(lost_kg - roll_ends, issued - roll_ends + costing.adhesive_kg);
    return {roll_loss + (1 - roll_loss) * board, board};
}

}  // namespace

CentreSplit split(const QuantityCentre& centre) {
    CentreSplit result;
    for (const TracedMaterial& material : centre.materials) {
        const Split split = by_share(material.cost, material.lost_share);
        result.material.product += split.product;
        result.material.loss += split.loss;
    }
    result.energy = by_share(centre.energy, centre.lost_share);
    result.system = by_share(centre.system, centre.lost_share);
    result.waste_management = {0, centre.waste_management};
    return result;
}

std::vector<StepCentre> centres_of(const Graph& graph, const Costing& costing) {
    std::vector<StepCentre> result;
    double intake = sum(costing.issued_kg) + costing.adhesive_kg;
    double carried = 0;
    for (std::size_t step = 0; step < costing.fed.size(); ++step) {
        double lost = 0;
        for (const auto& cause : costing.losses) lost += cause[step];
        QuantityCentre centre;
        centre.lost_share = ratio(lost, intake);
        const LostShares shares =
            step == 0 ? shares_at_corrugator(graph, costing, lost) : LostShares{centre.lost_share, centre.lost_share};
        centre.materials.push_back({carried, centre.lost_share});
        for (const LineAmount& line : costing.lines) {
            if (line.step != step) continue;
            const double amount = line.amount.to_double();
            switch (graph.models[line.model].lines[line.line].cost_class) {
                case contract::CostClass::material:
                    centre.materials.push_back({amount, line.ply ? shares.paper : shares.board});
                    break;
                case contract::CostClass::energy:
                    centre.energy += amount;
                    break;
                case contract::CostClass::system:
                    centre.system += amount;
                    break;
                case contract::CostClass::waste_management:
                    centre.waste_management += amount;
                    break;
                case contract::CostClass::recovery:
                    break;
            }
        }
        const CentreSplit centre_split = split(centre);
        result.push_back({intake, lost, centre_split.product(), centre_split.loss()});
        carried = centre_split.product();
        intake -= lost;
    }
    return result;
}

}  // namespace flutebook::engine
