// A corrugator's cost: each paper and the adhesive at what the month took in of it, opening stock included.
//
// Behind the corrugators board is one material with one average for the month, whether it stands on the floor, goes
// through a machine, or comes back from one.
//
//   average x (open + made + returned) = open money + made money + sum over converters of unit x returned
//   unit of a converter = (its open money + average x fed + its energy and system cost) / (its open + fed)
//
// A converter that held nothing when the month began has unit = average + cost / fed. What returns from one machine is
// fed to the next, so the average stands on both sides: units are straight lines in it, and it is solved for.
#include "host/month/costs.hpp"

#include <cmath>
#include <set>
#include <vector>

#include "host/production/accounts.hpp"

namespace flutebook::month {

namespace {

void add_all(std::map<std::string, Grams>& sums, const std::map<std::string, Grams>& more) {
    for (const auto& [cause, mass] : more) sums[cause] += mass;
}

std::map<std::string, Grams> losses_of(const FlowsByAccount& workings) {
    std::map<std::string, Grams> lost;
    for (const auto& [code, machine] : workings.machines)
        for (const auto& flow : machine.out)
            if (flow.to == production::account::loose_scrap) lost[flow.cause] += flow.mass;
    add_all(lost, workings.floor_lost);
    add_all(lost, workings.returned);
    return lost;
}

// What came back from finished goods leaves at what the month's product cost on the average.
void take_off_product(const FlowsByAccount& workings, CostSplit& split) {
    double finished_kg = 0;
    for (const auto& [code, machine] : workings.machines)
        for (const auto& flow : machine.out)
            if (flow.to == production::account::finished) finished_kg += flow.mass.to_kg();
    const double per_kg = rate_of(split.product, finished_kg).per_kg;
    for (const auto& [cause, mass] : workings.returned) {
        split.waste[cause] += mass.to_kg() * per_kg;
        split.product -= mass.to_kg() * per_kg;
    }
}

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

double CostSplit::all() const {
    double sum = product + unexplained + idle;
    for (const auto& [cause, money] : waste) sum += money;
    for (const auto& [stock, money] : closing) sum += money;
    return sum;
}

Rate rate_of(double money, double kg) {
    if (kg == 0 || money / kg < 0) return {0, money};
    return {money / kg, 0};
}

void charge_losses(double money, const std::map<std::string, Grams>& lost, CostSplit& split) {
    double lost_kg = 0;
    for (const auto& [cause, mass] : lost) lost_kg += mass.to_kg();
    if (lost_kg <= 0) {
        split.idle += money;
        return;
    }
    for (const auto& [cause, mass] : lost) split.waste[cause] += money * mass.to_kg() / lost_kg;
}

CostSplit split_cost(const FlowsByAccount& workings, const std::map<std::string, double>& paper_prices,
                     double floor_closing_kg) {
    CostSplit split;
    Sheets result;
    for (const auto& [code, machine] : workings.machines) {
        if (!machine.is_corrugator()) continue;
        const auto sheets = split_corrugator(machine, paper_prices, split);
        result.money += sheets.money;
        result.kg += sheets.kg;
    }
    split_floor(workings, result, floor_closing_kg, split);
    take_off_product(workings, split);
    charge_losses(workings.baler.to_double(), losses_of(workings), split);
    return split;
}

std::optional<ProcessCost> process_cost(const MonthAccount& account, double scrap_price) {
    const Grams used = account.issued + account.adhesive + account.opening_stock() - account.closing_stock();
    const Money spent = account.money_in + account.opening_cost - account.closing_cost;
    const Grams due = used - account.expected();
    if (due <= Grams()) return std::nullopt;
    ProcessCost cost{};
    cost.normal = account.expected();
    cost.abnormal = due - account.product;
    cost.normal_value = cost.normal.to_kg() * scrap_price;
    cost.cost_per_kg = (spent.to_double() - cost.normal_value) / due.to_kg();
    cost.product_value = account.product.to_kg() * cost.cost_per_kg;
    cost.abnormal_value = cost.abnormal.to_kg() * cost.cost_per_kg;
    cost.abnormal_proceeds = cost.abnormal.to_kg() * scrap_price;
    return cost;
}

double scrap_price(const MonthAccount& account) {
    return account.paid > Grams() ? account.revenue.to_double() / account.paid.to_kg() : 0;
}

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
