#include "host/month/weighed_paper.hpp"

#include <algorithm>
#include <utility>

#include "host/production/accounts.hpp"
#include "host/production/grams.hpp"

namespace flutebook::month {

namespace {

using Weights = std::map<std::string, double>;

void weigh(Weights& weights, const std::string& material, Grams mass) {
    if (material != production::material::adhesive && material != production::material::paper)
        weights[material] += mass.to_kg();
}

// Without the materials of which less than nothing was there.
Weights above_zero(Weights weights) {
    for (auto at = weights.begin(); at != weights.end();) at = at->second > 0 ? std::next(at) : weights.erase(at);
    return weights;
}

Weights weights_of(const MachineFlows& machine) {
    Weights issued, stood, ran;
    for (const auto& [material, held] : machine.bought) weigh(issued, material, held.mass);
    for (const auto& [material, held] : machine.open) weigh(stood, material, held.mass);
    for (const auto& flow : machine.out) weigh(ran, flow.material, flow.mass);
    issued = above_zero(std::move(issued));
    if (!issued.empty()) return issued;
    stood = above_zero(std::move(stood));
    return stood.empty() ? above_zero(std::move(ran)) : stood;
}

}  // namespace

void name_weighed_paper(MachineFlows& machine) {
    const auto weights = weights_of(machine);
    double sum = 0;
    for (const auto& [material, weight] : weights) sum += weight;
    if (sum <= 0) return;
    std::vector<Outflow> named;
    for (const auto& flow : machine.out) {
        if (flow.material != production::material::paper) {
            named.push_back(flow);
            continue;
        }
        std::vector<double> parts_kg;
        for (const auto& [material, weight] : weights) parts_kg.push_back(flow.mass.to_kg() * weight / sum);
        const auto parts = production::parts_of(flow.mass, parts_kg);
        std::size_t i = 0;
        for (const auto& [material, weight] : weights) named.push_back({flow.to, material, flow.cause, parts[i++]});
    }
    machine.out = std::move(named);
}

}  // namespace flutebook::month
