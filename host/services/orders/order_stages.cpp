#include "host/services/orders/order_stages.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string>

#include "host/base/date.hpp"
#include "host/base/errors.hpp"
#include "host/services/orders/production_scenario.hpp"
#include "host/services/orders/run_as_posted.hpp"
#include "ledger/values/error.hpp"

namespace flutebook::services {

namespace {

using engine::Costing;
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

// Who refuses is known where the row is refused as a quote would be, too.
std::string why_refused(const engine::Engine& engine, const engine::Row& row) {
    const auto outcome = engine.cost({&row, 1}, 1).front();
    if (outcome.state != engine::Outcome::State::refused) return "a model refuses it";
    const contract::Model& model = engine.graph().models[outcome.model];
    return fmt::format("model {} refuses it: {}", model.id, model.reasons[outcome.reason]);
}

Costing costed(const OrderRecord& order, const engine::Engine& engine, const engine::Row& row,
               std::optional<Costing> costing) {
    if (costing) return std::move(*costing);
    throw LedgerError(LedgerError::Kind::refused,
                      fmt::format("order {}: cannot be costed as it was made, {} of them: {}; ask the model's author",
                                  order.number, row.order->quantity, why_refused(engine, row)));
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
    return price->per_tonne / 1000;
}

// Weighted by the paper each run was issued. Where the price was the same throughout, it is that price to the bit.
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

void run_converters(ProductionScenario& way, const std::vector<answers::StepRan>& steps) {
    for (std::size_t k = 1; k < steps.size(); ++k) way.run_on(k, steps[k].costed, steps[k].setups);
}

// The web as wide as it was on average; as many sheets on it as in the longest run.
void run_web(ProductionScenario& way, const answers::StepRan& step, const OrderActual& actual) {
    way.run_on(0, step.costed, step.setups);
    const auto longest =
        std::max_element(actual.web.begin(), actual.web.end(),
                         [](const auto& left, const auto& right) { return left.metres < right.metres; });
    double metres = 0;
    double wider = 0;
    for (const auto& run : actual.web) {
        metres += run.metres;
        wider += run.metres * (run.roll_width_mm - longest->roll_width_mm);
    }
    way.cut_web(longest->roll_width_mm + (metres > 0 ? wider / metres : 0), longest->outs);
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
    StageCostings result;
    const auto steps = steps_ran(order, actual);
    const ProductionScenario quote(engine, quoted, order, order.quantity);
    result.quoted = costed(order, engine, quote.row(), engine.cost_in_full(quote.row()));

    ProductionScenario way(engine, quoted, order, actual.boxes());
    result.standard = costed(order, engine, way.row(), engine.cost_in_full(way.row()));

    const RunBasis basis{engine.graph(), order, actual, way.row()};
    run_converters(way, steps);
    result.converted = costed(order, engine, way.row(),
                              engine.cost_in_full(way.row(), converters_as_posted(basis, result.standard.allowances)));

    run_web(way, steps[0], actual);
    const engine::MeasuredRun posted = all_as_posted(basis);
    result.used = costed(order, engine, way.row(), engine.cost_in_full(way.row(), posted));

    std::vector<double> prices;
    for (const auto& ply : way.layout().board.plies)
        prices.push_back(price_paid(today, quoted.plant.papers[ply.paper].code, order, actual));
    way.set_prices(prices);
    result.paid = costed(order, engine, way.row(), engine.cost_in_full(way.row(), posted));
    return result;
}

}  // namespace flutebook::services
