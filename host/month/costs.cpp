// A corrugator's cost: each paper and the adhesive at what the month took in of it, opening stock included.
//
// Behind the corrugators board is one material with one average for the month, whether it stands on the floor, goes
// through a machine, or comes back from one.
//
//   average x (open + made + returned) = open money + made money + sum over converters of unit x returned
//   unit of a converter = (its open money + (average + e) x fed) / (its open + fed)
//   e of a converter = its energy and system cost / fed by rows of the month's own
//
// A converter that held nothing when the month began has unit = average + e. What returns from one machine is fed to
// the next, so the average stands on both sides: units are straight lines in it, and it is solved for. All of them have
// two parts, cash and system, and the same lines hold for each part.
#include "host/month/costs.hpp"

#include <set>
#include <vector>

#include "host/production/accounts.hpp"

namespace flutebook::month {

namespace {

using LostByCause = std::map<std::string, Grams>;

template <typename Value>
Value at(const std::map<std::string, Value>& values, const std::string& key) {
    const auto found = values.find(key);
    return found == values.end() ? Value{} : found->second;
}

void add_all(LostByCause& sums, const LostByCause& more) {
    for (const auto& [cause, mass] : more) sums[cause] += mass;
}

double sum_kg(const LostByCause& losses) {
    Grams sum;
    for (const auto& [cause, mass] : losses) sum += mass;
    return sum.to_kg();
}

LostByCause losses_of(const MachineFlows& machine) {
    LostByCause lost;
    for (const auto& flow : machine.out)
        if (flow.to == production::account::loose_scrap) lost[flow.cause] += flow.mass;
    return lost;
}

// Waste-management cost over losses by kg, at the rate of those that rows of the month's own lost.
void charge_losses(double money, const LostByCause& lost, const LostByCause& taken_back, CostSplit& split) {
    const double lost_kg = sum_kg(lost), own_kg = lost_kg - sum_kg(taken_back);
    if (own_kg <= 0) {
        split.idle += money;
        return;
    }
    for (const auto& [cause, mass] : lost) split.waste[cause].handling += money / own_kg * mass.to_kg();
    split.corrections += money - money / own_kg * lost_kg;
}

// What a kg of a pool of cost is worth. Where the pool has no mass, or one of the other sign, nothing: the cost is
// idle.
CarriedCost rate_or_idle(const CarriedCost& money, double kg, CostSplit& split) {
    if (kg != 0 && money.all() / kg >= 0) return 1 / kg * money;
    split.idle += money.all();
    return {};
}

// A machine's energy and system cost for each kg of `own_kg`, moved by rows of the month's own; `all_kg` bear it.
// Idle where nothing ran.
CarriedCost processing_rate(const MachineFlows& machine, double own_kg, double all_kg, CostSplit& split) {
    const CarriedCost money{machine.energy.to_double(), machine.system.to_double()};
    if (!machine.has_own_row || own_kg <= 0 || money.all() < 0) {
        split.idle += money.all();
        return {};
    }
    const auto rate = 1 / own_kg * money;
    split.corrections += rate.all() * (own_kg - all_kg);
    return rate;
}

// One material at a corrugator: what a kg of it is worth, and how much of it is unexplained.
struct Material {
    double per_kg;
    double unexplained_kg;
};

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
    if (kg != 0 && money / kg >= 0) return {money / kg, unexplained_kg};
    const double price = at(paper_prices, name);
    split.idle += money - price * kg;
    return {price, unexplained_kg};
}

// What the corrugators put on the floor.
struct Sheets {
    CarriedCost money;
    double kg = 0;
};

Sheets split_corrugator(const MachineFlows& machine, const std::map<std::string, double>& paper_prices,
                        CostSplit& split) {
    std::map<std::string, Material> materials;
    for (const auto& name : materials_of(machine)) materials[name] = trace(machine, name, paper_prices, split);
    // Energy and system cost go over everything that left, unexplained included.
    const double gone_kg = machine.gone().to_kg(), own_kg = gone_kg - machine.taken_back.in.to_kg();
    const auto processing = processing_rate(machine, own_kg, gone_kg, split);
    split.idle += machine.open_system.to_double();  // paper has none

    Sheets sheets;
    for (const auto& flow : machine.out) {
        const double kg = flow.mass.to_kg();
        const auto money = kg * (CarriedCost{materials[flow.material].per_kg, 0} + processing);
        if (flow.to == production::account::floor) {
            sheets.money += money;
            sheets.kg += kg;
        } else if (flow.to == production::account::finished) {
            split.product += money;
        } else {
            split.waste[flow.cause].carried += money;
        }
    }
    for (const auto& [name, material] : materials)
        split.unexplained += material.unexplained_kg * (CarriedCost{material.per_kg, 0} + processing);
    for (const auto& [name, mass] : machine.close)
        split.closing[{machine.code, name}] += mass.to_kg() * CarriedCost{materials[name].per_kg, 0};
    charge_losses(machine.waste_management.to_double(), losses_of(machine), machine.taken_back.lost, split);
    return sheets;
}

// A converter's unit = base + slope x average.
struct ConverterCost {
    const MachineFlows* machine;
    CarriedCost open_money, base;
    double slope = 1, returned_kg = 0;

    [[nodiscard]] double held_kg() const { return (machine->opened().mass + machine->fed).to_kg(); }
};

ConverterCost read(const MachineFlows& machine, CostSplit& split) {
    ConverterCost result{&machine, {machine.opened().money.to_double(), machine.open_system.to_double()}, {}};
    const double fed_kg = machine.fed.to_kg(), held_kg = result.held_kg();
    const auto e = processing_rate(machine, fed_kg - machine.taken_back.in.to_kg(), fed_kg, split);
    result.base = e;
    if (held_kg > 0) {
        result.base = 1 / held_kg * (result.open_money + fed_kg * e);
        result.slope = fed_kg / held_kg;
    }
    for (const auto& flow : machine.out)
        if (flow.to == production::account::floor) result.returned_kg += flow.mass.to_kg();
    return result;
}

void split_converter(const ConverterCost& converter, const CarriedCost& average, CostSplit& split) {
    const auto& machine = *converter.machine;
    const auto unit = converter.base + converter.slope * average;
    // Where less than nothing was there to work on, its opening stock has cost that nothing carries on.
    if (converter.held_kg() <= 0) split.idle += converter.open_money.all() - machine.opened().mass.to_kg() * unit.all();
    for (const auto& flow : machine.out) {
        const auto money = flow.mass.to_kg() * unit;
        if (flow.to == production::account::finished) split.product += money;
        if (flow.to == production::account::loose_scrap) split.waste[flow.cause].carried += money;
    }
    split.unexplained += (machine.gone() - machine.passed() - machine.lost()).to_kg() * unit;
    for (const auto& [material, mass] : machine.close) split.closing[{machine.code, material}] += mass.to_kg() * unit;
    charge_losses(machine.waste_management.to_double(), losses_of(machine), machine.taken_back.lost, split);
}

// What the floor held and was given, over the converters and back, at one average for the month.
void split_floor(const FlowsByAccount& workings, const Sheets& sheets, double closing_kg, CostSplit& split) {
    std::vector<ConverterCost> converters;
    auto money = sheets.money;
    money += {workings.floor_open.money.to_double(), workings.floor_open_system.to_double()};
    double kg = workings.floor_open.mass.to_kg() + sheets.kg;
    for (const auto& [code, machine] : workings.machines) {
        if (machine.is_corrugator()) continue;
        converters.push_back(read(machine, split));
        const auto& converter = converters.back();
        money += converter.returned_kg * converter.base;
        kg += (1 - converter.slope) * converter.returned_kg;
    }
    const auto average = rate_or_idle(money, kg, split);
    for (const auto& converter : converters) split_converter(converter, average, split);
    for (const auto& [cause, mass] : workings.floor_lost) split.waste[cause].carried += mass.to_kg() * average;
    split.unexplained += -workings.floor_counted.to_kg() * average;
    split.closing[{production::account::floor, production::material::board}] += closing_kg * average;
}

// What came back from finished goods leaves at what the month's product cost on the average.
void take_off_product(const FlowsByAccount& workings, CostSplit& split) {
    double finished_kg = 0;
    for (const auto& [code, machine] : workings.machines)
        for (const auto& flow : machine.out)
            if (flow.to == production::account::finished) finished_kg += flow.mass.to_kg();
    if (finished_kg == 0 || split.product.all() / finished_kg < 0) return;
    const auto per_kg = 1 / finished_kg * split.product;
    for (const auto& [cause, mass] : workings.returned) {
        split.waste[cause].carried += mass.to_kg() * per_kg;
        split.product += -mass.to_kg() * per_kg;
    }
}

// The baler works for all losses.
void charge_baler(const FlowsByAccount& workings, CostSplit& split) {
    LostByCause lost, taken_back = workings.lost_taken_back;
    for (const auto& [code, machine] : workings.machines) {
        add_all(lost, losses_of(machine));
        add_all(taken_back, machine.taken_back.lost);
    }
    add_all(lost, workings.floor_lost);
    add_all(lost, workings.returned);
    const auto all = workings.baler_energy + workings.baler_system + workings.baler_waste_management;
    charge_losses(all.to_double(), lost, taken_back, split);
}

}  // namespace

CostSplit split_cost(const FlowsByAccount& workings, const std::map<std::string, double>& paper_prices,
                     double floor_closing_kg) {
    CostSplit split;
    Sheets all_sheets;
    for (const auto& [code, machine] : workings.machines) {
        if (!machine.is_corrugator()) continue;
        const auto sheets = split_corrugator(machine, paper_prices, split);
        all_sheets.money += sheets.money;
        all_sheets.kg += sheets.kg;
    }
    split_floor(workings, all_sheets, floor_closing_kg, split);
    take_off_product(workings, split);
    charge_baler(workings, split);
    return split;
}

}  // namespace flutebook::month
