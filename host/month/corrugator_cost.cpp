// A corrugator's cost: each paper and the adhesive at what the month took in of it, opening stock included.
#include <set>

#include "host/month/costs.hpp"
#include "host/production/accounts.hpp"

namespace flutebook::month {

namespace {

// One material: what a kg of it is worth, and how much of it is unexplained.
struct Material {
    double per_kg;
    double unexplained_kg;
};

template <typename Value>
Value at(const std::map<std::string, Value>& values, const std::string& key) {
    const auto found = values.find(key);
    return found == values.end() ? Value{} : found->second;
}

std::set<std::string> materials_of(const MachineFlows& machine) {
    std::set<std::string> names;
    for (const auto& [name, held] : machine.open) names.insert(name);
    for (const auto& [name, held] : machine.bought) names.insert(name);
    for (const auto& [name, mass] : machine.close) names.insert(name);
    for (const auto& flow : machine.out) names.insert(flow.material);
    return names;
}

// Where none came in, a kg is worth what it would cost, and the mass that was used all the same stays unexplained.
Material trace(const MachineFlows& machine, const std::string& name, const std::map<std::string, double>& paper_prices,
               CostSplit& split) {
    auto in = at(machine.open, name);
    in += at(machine.bought, name);
    Grams left = at(machine.close, name);
    for (const auto& flow : machine.out)
        if (flow.material == name) left += flow.mass;
    const double unexplained_kg = (in.mass - left).to_kg();
    const double kg = in.mass.to_kg(), money = in.money.to_double();
    const auto rate = rate_of(money, kg);
    if (kg != 0 && rate.idle == 0) return {rate.per_kg, unexplained_kg};
    const double price = at(paper_prices, name);
    split.idle += money - price * kg;
    return {price, unexplained_kg};
}

}  // namespace

Sheets split_corrugator(const MachineFlows& machine, const std::map<std::string, double>& paper_prices,
                        CostSplit& split) {
    std::map<std::string, Material> materials;
    for (const auto& name : materials_of(machine)) materials[name] = trace(machine, name, paper_prices, split);
    const double processing = machine.processing.to_double(), gone_kg = machine.gone().to_kg();
    // Over everything that left, unexplained included.
    const Rate energy_and_system = gone_kg > 0 ? rate_of(processing, gone_kg) : Rate{0, processing};
    split.idle += energy_and_system.idle;

    Sheets result;
    std::map<std::string, Grams> lost;
    for (const auto& flow : machine.out) {
        const double money = flow.mass.to_kg() * (materials[flow.material].per_kg + energy_and_system.per_kg);
        if (flow.to == production::account::floor) {
            result.money += money;
            result.kg += flow.mass.to_kg();
        } else if (flow.to == production::account::finished) {
            split.product += money;
        } else {
            split.waste[flow.cause] += money;
            lost[flow.cause] += flow.mass;
        }
    }
    for (const auto& [name, material] : materials)
        split.unexplained += material.unexplained_kg * (material.per_kg + energy_and_system.per_kg);
    for (const auto& [name, mass] : machine.close)
        split.closing[{machine.code, name}] += mass.to_kg() * materials[name].per_kg;
    charge_losses(machine.waste_management.to_double(), lost, split);
    return result;
}

}  // namespace flutebook::month
