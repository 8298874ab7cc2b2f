#include "host/services/orders/order_stages.hpp"

#include <fmt/format.h>
#include <flutebook/run.hpp>

#include <algorithm>
#include <string>

#include "host/base/date.hpp"
#include "host/base/errors.hpp"
#include "host/scenario/scenario.hpp"

namespace flutebook::services {

namespace {

using engine::MeasuredRun;
using orders::OrderRecord;
using production::OrderActual;
using production::WebAreas;

// Of one step, with a row added, which set the machine up so often.
void add_row(answers::StepRan& step, const std::string& machine, double amount, double setups) {
    const auto known = std::find_if(
        step.machines.begin(), step.machines.end(),
        [&](const answers::StepRan::MachineAmount& machine_amount) { return machine_amount.code == machine; });
    if (known != step.machines.end())
        known->amount += amount;
    else
        step.machines.push_back({machine, amount});
    step.setups += setups;
}

void finish(answers::StepRan& step) {
    const auto most = std::max_element(step.machines.begin(), step.machines.end(),
                                       [](const auto& left, const auto& right) { return left.amount < right.amount; });
    step.costed = most->code;
    if (step.setups <= 0) step.setups = 1;
}

[[noreturn]] void refuse_paper(const plant::Plant& today, const std::string& paper, const std::string& what) {
    throw InputError(InputError::Whose::plant,
                     {fmt::format("{}/papers.yaml: papers.{}: {}", today.folder, paper, what)});
}

double price_on(const plant::Plant& today, const std::string& paper, base::Date day) {
    const auto* found = today.find_paper(paper);
    if (found == nullptr)
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

// Every step after the corrugator on the machine that it is costed at, which was set up so often.
void run_converters(scenario::Overrides& overrides, const std::vector<answers::StepRan>& steps,
                    const plant::Plant& plant) {
    for (std::size_t k = 1; k < steps.size(); ++k) {
        overrides.machines.push_back({k, steps[k].costed});
        auto converter = *plant.find_converter(steps[k].costed);
        converter.setup_min *= steps[k].setups;
        overrides.plant.converters.push_back(std::move(converter));
    }
}

// The web as wide as it was on average; as many sheets on it as in the longest run.
scenario::WebOverride web_as_posted(const OrderActual& actual) {
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
    auto corrugator = *plant.find_corrugator(step.costed);
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

// What all runs of one order are worked out from; refers to all of it. `row` is the order at the boxes that were made.
struct RunBasis {
    const engine::Graph& graph;
    const OrderRecord& order;
    const OrderActual& actual;
    engine::Row row;
};

// A run without anything in it yet.
MeasuredRun empty_run(const RunBasis& basis) {
    const std::size_t steps = basis.row.steps();
    const auto& causes = basis.graph.models[basis.graph.shedder].losses;
    MeasuredRun result{};
    result.fed.assign(steps, 0);
    result.good.assign(steps, 0);
    result.issued_kg.assign(basis.row.plies(), 0);
    result.losses.assign(causes.size(), std::vector<double>(steps, 0));
    return result;
}

void lose(MeasuredRun& result, const RunBasis& basis, const std::string& cause, std::size_t step, double kg) {
    const contract::Model& model = basis.graph.models[basis.graph.shedder];
    const auto found =
        std::find_if(model.losses.begin(), model.losses.end(), [&](const auto& item) { return item.cause == cause; });
    if (found != model.losses.end())
        result.losses[static_cast<std::size_t>(found - model.losses.begin())][step] += kg;
    else if (kg != 0)
        throw ModelError(fmt::format("{}: sheds no {}, which the order lost; cost the order without this model",
                                     model.where(), cause));
}

// Where nothing is lost, rounding may leave a number just below zero.
double not_below_nothing(double value) {
    return std::max(value, 0.0);
}

void add_converters(MeasuredRun& result, const RunBasis& basis) {
    const double gsm = basis.row.order->layout->board.grammage_gsm;
    const auto& order = basis.order;
    for (std::size_t k = 1; k <= order.last_step(); ++k)
        for (const auto& run : basis.actual.steps[k - 1]) {
            result.fed[k] += run.pieces.fed;
            result.good[k] += run.pieces.good;
            lose(result, basis, "setup", k, run::mass(run.areas.setup, gsm));
            lose(result, basis, "rejects", k, run::mass(run.areas.rejects, gsm));
            lose(result, basis, "cut-out", k, not_below_nothing(run::mass(run.areas.cut_out, gsm)));
            lose(result, basis, "surplus", k, run::mass(run.areas.surplus, gsm));
        }
    result.fed.back() = result.good.back() = basis.actual.boxes();
}

// Board of an area combined, with the paper and adhesive that it takes.
void add_web(MeasuredRun& result, const RunBasis& basis, double metres, double area_m2, double roll_loss) {
    result.web_length_m += metres;
    result.web_area_m2 += area_m2;
    const auto& plies = basis.row.order->layout->board.plies;
    double issued_kg = 0;
    double adhesive_gsm = 0;
    for (std::size_t p = 0; p < plies.size(); ++p) {
        const double kg = run::paper_issued(area_m2, plies[p].grammage_gsm, plies[p].take_up, roll_loss);
        result.issued_kg[p] += kg;
        issued_kg += kg;
        adhesive_gsm += plies[p].adhesive_gsm;
    }
    result.adhesive_kg += run::mass(area_m2, adhesive_gsm);
    lose(result, basis, "roll-ends", 0, issued_kg * roll_loss);
}

void add_web_losses(MeasuredRun& result, const RunBasis& basis, const WebAreas& areas) {
    const double gsm = basis.row.order->layout->board.grammage_gsm;
    // More sheets than full rows at the knife hold: then the two cannot be told apart.
    const bool is_one = areas.run_waste < 0;
    lose(result, basis, "side-trim", 0, not_below_nothing(run::mass(areas.side_trim, gsm)));
    lose(result, basis, "order-change", 0, run::mass(areas.order_change, gsm));
    lose(result, basis, "corrugator-run", 0, not_below_nothing(run::mass(is_one ? areas.run() : areas.run_waste, gsm)));
    lose(result, basis, "surplus", 0, is_one ? 0 : run::mass(areas.surplus, gsm));
}

// The converters as posted; the corrugator runs what it is allowed for the good sheets that were posted, in one run of
// the order's own layout. Pieces that were made and never fed on stand on the floor: they are no loss. Throws
// ModelError where the model that lays out the run sheds no such loss.
MeasuredRun converters_as_posted(const RunBasis& basis, const engine::Allowances& allowed) {
    MeasuredRun result = empty_run(basis);
    add_converters(result, basis);
    const auto& order = basis.order;
    const auto cut = production::quoted_cut(order);
    const double good = basis.actual.good_sheets();
    const double metres = run::web_length(run::good_length(cut, good), allowed.run_waste[0], allowed.order_change_m);
    result.good[0] = good;
    add_web(result, basis, metres, metres * cut.roll_width, allowed.roll_loss);
    add_web_losses(result, basis, production::web_areas(cut, metres, allowed.order_change_m, good));
    return result;
}

// The corrugator as posted too, each run with its own web. Paper is issued for the web that was run, and what is
// stripped, left on the core or on the roll's end is what the corrugator that ran is allowed: rolls are not weighed by
// order.
MeasuredRun all_as_posted(const RunBasis& basis) {
    MeasuredRun result = empty_run(basis);
    add_converters(result, basis);
    for (const auto& run : basis.actual.web) {
        result.good[0] += run.good_sheets;
        add_web(result, basis, run.metres * run.web_share, run.combined_m2(),
                basis.order.find_corrugator(run.corrugator)->roll_loss);
        add_web_losses(result, basis, run.areas);
    }
    return result;
}

}  // namespace

std::vector<answers::StepRan> steps_ran(const OrderRecord& order, const OrderActual& actual) {
    std::vector<answers::StepRan> steps{{order.corrugator, {}, "", 0}};
    for (const auto& run : actual.web)
        add_row(steps[0], run.corrugator, run.metres, run.order_change_m > 0 ? run.web_share : 0);
    for (std::size_t k = 1; k <= order.last_step(); ++k) {
        auto& step = steps.emplace_back(answers::StepRan{order.route[k - 1], {}, "", 0});
        for (const auto& run : actual.steps[k - 1])
            add_row(step, run.converter, run.pieces.fed, run.pieces.setup > 0 ? 1 : 0);
    }
    for (auto& step : steps) finish(step);
    return steps;
}

void add_costs(StageCosts& sum, const engine::Graph& graph, const StageCostings& piece) {
    const auto add = [&](engine::ClassCosts& costs, const engine::Costing& costing) {
        const engine::ClassCosts of_piece = engine::costs_by_class(graph, costing);
        for (std::size_t c = 0; c < costs.size(); ++c) costs[c] += of_piece[c];
    };
    add(sum.quoted, piece.quoted);
    add(sum.standard, piece.standard);
    add(sum.converted, piece.converted);
    add(sum.used, piece.used);
    add(sum.paid, piece.paid);
}

StageCostings cost_stages(const engine::Engine& engine, const saved_quotes::QuotedPlant& quoted,
                          const OrderRecord& order, const OrderActual& actual, const plant::Plant& today,
                          const StageCosts& others) {
    const scenario::Quoted as_quoted{quoted.plant, quoted.request, order};
    const auto costing = [&](scenario::Overrides overrides, const engine::ClassCosts& of_others) {
        overrides.others = of_others;
        return scenario::Scenario(engine, as_quoted, std::move(overrides)).cost();
    };
    const auto steps = steps_ran(order, actual);
    StageCostings result;
    result.quoted = costing({order.quantity}, others.quoted);

    scenario::Overrides allowed{actual.boxes()};
    allowed.others = others.standard;
    const scenario::Scenario standard(engine, as_quoted, allowed);
    result.standard = standard.cost();

    const RunBasis basis{engine.graph(), order, actual, standard.row()};
    scenario::Overrides converted{actual.boxes()};
    run_converters(converted, steps, quoted.plant);
    converted.run = converters_as_posted(basis, result.standard.allowances);
    result.converted = costing(converted, others.converted);

    scenario::Overrides used = converted;
    run_corrugator(used, steps[0], actual, quoted.plant);
    used.run = all_as_posted(basis);
    used.trim = plant::TrimPolicy{};  // as many order changes as were made
    result.used = costing(used, others.used);

    scenario::Overrides paid = used;
    paid.plant.prices = prices_paid(today, order, actual);
    result.paid = costing(paid, others.paid);
    return result;
}

}  // namespace flutebook::services
