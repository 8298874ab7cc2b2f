#include "host/month/costs.hpp"

#include <cmath>

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

}  // namespace flutebook::month
