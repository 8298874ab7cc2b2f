// Behind the corrugators board is one material with one average for the month, whether it stands on the floor, goes
// through a machine, or comes back from one.
//
//   average x (open + made + returned) = open money + made money + sum over converters of unit x returned
//   unit of a converter = (its open money + average x fed + its energy and system cost) / (its open + fed)
//
// A converter that held nothing when the month began has unit = average + cost / fed. What returns from one machine is
// fed to the next, so the average stands on both sides: units are straight lines in it, and it is solved for.
#include <cmath>
#include <vector>

#include "host/month/costs.hpp"
#include "host/production/accounts.hpp"

namespace flutebook::month {

namespace {

// A converter's unit = base + slope x average.
struct ConverterCost {
    const MachineFlows* machine;
    double base, slope;
    double returned_kg;
};

ConverterCost read(const MachineFlows& machine) {
    ConverterCost converter_cost{&machine, 0, 1, 0};
    const double open_kg = machine.opened().mass.to_kg(), fed_kg = machine.fed.to_kg();
    if (open_kg + fed_kg > 0) {
        converter_cost.base =
            (machine.opened().money.to_double() + machine.processing.to_double()) / (open_kg + fed_kg);
        converter_cost.slope = fed_kg / (open_kg + fed_kg);
    }
    for (const auto& flow : machine.out)
        if (flow.to == production::account::floor) converter_cost.returned_kg += flow.mass.to_kg();
    return converter_cost;
}

// With no intake there is nothing to carry its cost.
void leave_idle(const ConverterCost& converter, double average, CostSplit& split) {
    const auto& machine = *converter.machine;
    const auto open = machine.opened();
    if (open.mass + machine.fed > Grams()) return;
    split.idle += open.money.to_double() + machine.processing.to_double() - average * open.mass.to_kg();
}

void split_converter(const ConverterCost& converter, double average, CostSplit& split) {
    const auto& machine = *converter.machine;
    const double unit = converter.base + converter.slope * average;
    leave_idle(converter, average, split);
    std::map<std::string, Grams> lost;
    for (const auto& flow : machine.out) {
        const double money = flow.mass.to_kg() * unit;
        if (flow.to == production::account::finished) split.product += money;
        if (flow.to != production::account::loose_scrap) continue;
        split.waste[flow.cause] += money;
        lost[flow.cause] += flow.mass;
    }
    split.unexplained += (machine.gone() - machine.passed() - machine.lost()).to_kg() * unit;
    for (const auto& [material, mass] : machine.close) split.closing[{machine.code, material}] += mass.to_kg() * unit;
    charge_losses(machine.waste_management.to_double(), lost, split);
}

}  // namespace

void split_floor(const FlowsByAccount& workings, const Sheets& result, double closing_kg, CostSplit& split) {
    std::vector<ConverterCost> converters;
    double money = workings.floor_open.money.to_double() + result.money;
    double kg = workings.floor_open.mass.to_kg() + result.kg;
    for (const auto& [code, machine] : workings.machines) {
        if (machine.is_corrugator()) continue;
        converters.push_back(read(machine));
        const auto& converter_cost = converters.back();
        money += converter_cost.base * converter_cost.returned_kg;
        kg += (1 - converter_cost.slope) * converter_cost.returned_kg;
    }
    const Rate average = rate_of(money, kg);
    split.idle += average.idle;
    for (const auto& converter : converters) split_converter(converter, average.per_kg, split);
    for (const auto& [cause, mass] : workings.floor_lost) split.waste[cause] += mass.to_kg() * average.per_kg;
    split.unexplained -= workings.floor_counted.to_kg() * average.per_kg;
    split.closing[{production::account::floor, production::material::board}] += closing_kg * average.per_kg;
}

}  // namespace flutebook::month
