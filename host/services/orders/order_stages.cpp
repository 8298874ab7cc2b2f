#include "host/services/orders/order_stages.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string>

#include "host/base/date.hpp"
#include "host/base/errors.hpp"
#include "host/scenario/scenario.hpp"
#include "host/services/orders/run_as_posted.hpp"

namespace flutebook::services {

namespace {

using orders::OrderRecord;
using production::OrderActual;

// Of one step, with a row added.
void add_row(answers::StepRan& step, const std::string& machine, double amount, double setup) {
    const auto known = std::find_if(
        step.machines.begin(), step.machines.end(),
        [&](const answers::StepRan::MachineAmount& machine_amount) { return machine_amount.code == machine; });
    if (known != step.machines.end())
        known->amount += amount;
    else
        step.machines.push_back({machine, amount});
    if (setup > 0) ++step.setups;
}

void finish(answers::StepRan& step) {
    const auto most = std::max_element(step.machines.begin(), step.machines.end(),
                                       [](const auto& left, const auto& right) { return left.amount < right.amount; });
    step.costed = most->code;
    step.setups = std::max(step.setups, 1.0);
}

[[noreturn]] void refuse_paper(const plant::Plant& today, const std::string& paper, const std::string& what) {
    throw InputError(InputError::Whose::plant,
                     {fmt::format("{}/papers.yaml: papers.{}: {}", today.folder, paper, what)});
}

double price_on(const plant::Plant& today, const std::string& paper, base::Date day) {
    const auto found = std::find_if(today.papers.begin(), today.papers.end(),
                                    [&](const plant::Paper& item) { return item.code == paper; });
    if (found == today.papers.end())
        refuse_paper(today, paper, "the order used this paper, and it is no longer there: found no entry; put it back");
    const auto* price = found->price_on(day);
    if (price == nullptr)
        refuse_paper(today, paper,
                     fmt::format("the order used it before it had a price: found a run on {}; give the price of that "
                                 "day",
                                 base::to_string(day)));
    return price->per_tonne;
}

// Money per t, weighted by the paper each run was issued. Where the price was the same throughout, it is that price to
// the bit.
double price_paid(const plant::Plant& today, const std::string& paper, const OrderRecord& order,
                  const OrderActual& actual) {
    const double first = price_on(today, paper, actual.web.front().date);
    double weight = 0;
    double dearer = 0;
    for (const auto& run : actual.web) {
        const double issued = run.combined_m2() / (1 - order.find_corrugator(run.corrugator)->roll_loss);
        weight += issued;
        dearer += issued * (price_on(today, paper, run.date) - first);
    }
    return weight > 0 ? first + dearer / weight : first;
}

template <typename Machine>
Machine machine_of(const std::vector<Machine>& machines, const std::string& code) {
    return *std::find_if(machines.begin(), machines.end(),
                         [&](const Machine& machine) { return machine.code == code; });
}

// Every step after the corrugator on the machine that it is costed at, which was set up so often.
void run_converters(scenario::Overrides& overrides, const std::vector<answers::StepRan>& steps,
                    const plant::Plant& plant) {
    for (std::size_t k = 1; k < steps.size(); ++k) {
        overrides.machines.push_back({k, steps[k].costed});
        auto converter = machine_of(plant.converters, steps[k].costed);
        converter.setup_min *= steps[k].setups;
        overrides.plant.converters.push_back(std::move(converter));
    }
}

// The web as wide as it was on average; as many sheets on it as in the longest run.
scenario::WebCut web_as_posted(const OrderActual& actual) {
    const auto longest =
        std::max_element(actual.web.begin(), actual.web.end(),
                         [](const auto& left, const auto& right) { return left.metres < right.metres; });
    double metres = 0;
    double wider = 0;
    for (const auto& run : actual.web) {
        metres += run.metres;
        wider += run.metres * (run.roll_width_mm - longest->roll_width_mm);
    }
    return {longest->roll_width_mm + (metres > 0 ? wider / metres : 0), longest->outs};
}

void run_corrugator(scenario::Overrides& overrides, const answers::StepRan& step, const OrderActual& actual,
                    const plant::Plant& plant) {
    overrides.machines.push_back({0, step.costed});
    auto corrugator = machine_of(plant.corrugators, step.costed);
    corrugator.order_change_min *= step.setups;
    overrides.plant.corrugators.push_back(std::move(corrugator));
    overrides.web = web_as_posted(actual);
}

std::vector<scenario::PaperPrice> prices_paid(const plant::Plant& today, const OrderRecord& order,
                                              const OrderActual& actual) {
    std::vector<scenario::PaperPrice> result;
    for (const auto& ply : order.plies) result.push_back({ply.paper, price_paid(today, ply.paper, order, actual)});
    return result;
}

}  // namespace

std::vector<answers::StepRan> steps_ran(const OrderRecord& order, const OrderActual& actual) {
    std::vector<answers::StepRan> steps{{order.corrugator, {}, "", 0}};
    for (const auto& run : actual.web) add_row(steps[0], run.corrugator, run.metres, run.order_change_m);
    for (std::size_t k = 1; k <= order.last_step(); ++k) {
        auto& step = steps.emplace_back(answers::StepRan{order.route[k - 1], {}, "", 0});
        for (const auto& run : actual.steps[k - 1]) add_row(step, run.converter, run.pieces.fed, run.pieces.setup);
    }
    for (auto& step : steps) finish(step);
    return steps;
}

StageCostings cost_stages(const engine::Engine& engine, const QuotedPlant& quoted, const OrderRecord& order,
                          const OrderActual& actual, const plant::Plant& today) {
    const scenario::Quoted as_quoted{quoted.plant, quoted.request, order};
    const auto costing = [&](const scenario::Overrides& overrides) {
        return scenario::Scenario(engine, as_quoted, overrides).cost();
    };
    const auto steps = steps_ran(order, actual);
    StageCostings result;
    result.quoted = costing({order.quantity});

    const scenario::Scenario standard(engine, as_quoted, {actual.boxes()});
    result.standard = standard.cost();

    const RunBasis basis{engine.graph(), order, actual, standard.row()};
    scenario::Overrides converted{actual.boxes()};
    run_converters(converted, steps, quoted.plant);
    converted.run = converters_as_posted(basis, result.standard.allowances);
    result.converted = costing(converted);

    scenario::Overrides used = converted;
    run_corrugator(used, steps[0], actual, quoted.plant);
    used.run = all_as_posted(basis);
    result.used = costing(used);

    scenario::Overrides paid = used;
    paid.plant.prices = prices_paid(today, order, actual);
    result.paid = costing(paid);
    return result;
}

}  // namespace flutebook::services
