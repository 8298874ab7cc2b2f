#include "host/services/orders/order_cost.hpp"

#include <fmt/format.h>

#include <flutebook/run.hpp>
#include <numeric>

#include "host/base/errors.hpp"
#include "host/quoting/order_terms.hpp"
#include "host/saved_quotes/saved_quote.hpp"
#include "host/services/orders/order.hpp"
#include "host/workplace/workplace.hpp"
#include "ledger/reading/entries.hpp"

namespace flutebook::services {

namespace {

using engine::Costing;
using engine::Graph;
using engine::LineAmount;

constexpr int all_decimals = 4;

// One sum of each costing.
template <typename Sum>
answers::Stages by_stage(const StageCostings& costings, const Sum& sum) {
    return {sum(costings.quoted), sum(costings.standard), sum(costings.converted), sum(costings.used),
            sum(costings.paid)};
}

std::vector<answers::LineVariance> lines_of(const Graph& graph, const StageCostings& costings) {
    std::vector<answers::LineVariance> result;
    for (std::size_t m = 0; m < graph.models.size(); ++m)
        for (std::size_t l = 0; l < graph.models[m].lines.size(); ++l) {
            const contract::Line& line = graph.models[m].lines[l];
            const answers::Stages cost = by_stage(costings, [&](const Costing& costing) {
                Money sum;
                for (const LineAmount& item : costing.lines)
                    if (item.model == m && item.line == l) sum += item.amount;
                return sum;
            });
            if (cost == answers::Stages{}) continue;
            result.push_back({graph.models[m].id, line.name, line.title, line.cost_class, cost});
        }
    return result;
}

// Unrounded: an amount is quantity times rate, and rounding the rate would change it.
template <typename IsOwn>
double charged_per_kg(const Costing& costing, double kg, const IsOwn& is_own) {
    double charged = 0;
    for (const LineAmount& line : costing.lines)
        if (is_own(line)) charged += line.quantity == kg ? line.rate : line.quantity * line.rate / kg;
    return kg > 0 ? charged : 0;
}

template <typename Quantity, typename IsOwn>
answers::InputVariance input_of(const StageCostings& costings, std::string material, const Quantity& kg,
                                const IsOwn& is_own) {
    const answers::MaterialInput input{kg(costings.quoted),
                                       kg(costings.standard),
                                       kg(costings.converted),
                                       kg(costings.used),
                                       charged_per_kg(costings.standard, kg(costings.standard), is_own),
                                       charged_per_kg(costings.paid, kg(costings.paid), is_own)};
    const auto cost = answers::stages_of(input);
    if (!cost) throw ModelError(material + ": costs too much to be kept: no amount may reach 9e10");
    return {std::move(material), std::nullopt, input, *cost};
}

std::vector<answers::InputVariance> inputs_of(const Graph& graph, const orders::OrderRecord& order,
                                              const StageCostings& costings) {
    std::vector<answers::InputVariance> result;
    for (std::size_t p = 0; p < order.plies.size(); ++p) {
        result.push_back(input_of(
            costings, order.plies[p].paper, [p](const Costing& costing) { return costing.issued_kg[p]; },
            [&](const LineAmount& line) { return quoting::is_of_ply(graph, line, p); }));
        result.back().ply = p;
    }
    result.push_back(input_of(
        costings, "adhesive", [](const Costing& costing) { return costing.adhesive_kg; },
        [&](const LineAmount& line) { return quoting::is_of_adhesive(graph, line); }));
    return result;
}

answers::OrderMass::Masses masses_of(const orders::OrderRecord& order, const Costing& costing, double boxes) {
    answers::OrderMass::Masses result{};
    result.issued = std::accumulate(costing.issued_kg.begin(), costing.issued_kg.end(), 0.0);
    result.adhesive = costing.adhesive_kg;
    result.product = run::mass(boxes * order.box_area_m2, order.grammage_gsm);
    for (const auto& by_step : costing.losses)
        result.losses.push_back(std::accumulate(by_step.begin(), by_step.end(), 0.0));
    return result;
}

// Good pieces that went on less those that were fed, step by step: they stand on the floor, as in the month.
double floor_kg(const orders::OrderRecord& order, const production::OrderActual& actual) {
    double kg = 0;
    for (std::size_t k = 1; k <= order.last_step(); ++k) {
        const double over = actual.went_on(k - 1) - actual.fed(k);
        kg += run::mass(over * production::route_step(order, k).piece_m2, order.grammage_gsm);
    }
    return kg;
}

answers::OrderMass mass_of(const Graph& graph, const OrderFile& file, const StageCostings& costings) {
    answers::OrderMass result;
    for (const auto& loss : graph.models[graph.shedder].losses) result.causes.push_back({loss.cause, loss.title});
    const double boxes = file.actual.boxes();
    result.allowed = masses_of(file.order, costings.standard, boxes);
    result.actual = masses_of(file.order, costings.used, boxes);
    result.actual.floor = floor_kg(file.order, file.actual);
    return result;
}

std::vector<answers::OrderStep> steps_of(const OrderFile& file, const StageCostings& costings) {
    std::vector<answers::OrderStep> result;
    const auto& standard = costings.standard;
    for (auto& ran : steps_ran(file.order, file.actual)) {
        const std::size_t k = result.size();
        answers::OrderStep step{std::move(ran), {}, {}};
        if (k == 0) {
            step.allowed = {standard.web_length_m, standard.allowances.order_change_m, standard.good[0]};
            step.actual = {costings.used.web_length_m, 0, costings.used.good[0]};
            for (const auto& run : file.actual.web) step.actual.setup += run.order_change_m;
        } else {
            step.allowed = {standard.fed[k], standard.allowances.setup_sheets[k], standard.good[k]};
            step.actual = {costings.used.fed[k], 0, costings.used.good[k]};
            for (const auto& run : file.actual.steps[k - 1]) step.actual.setup += run.pieces.setup;
        }
        result.push_back(std::move(step));
    }
    return result;
}

// What the quote, as it was answered, says that this quantity costs; of a set, this piece.
Money saved_cost(const ledger::SavedQuote& quote, const orders::OrderRecord& order) {
    const auto document = saved_quotes::saved_document(quote);
    const std::vector<answers::RequestAnswer::Quantity>* quantities = &document.answer.quantities;
    for (const auto& piece : document.answer.pieces)
        if (piece.name == order.piece) quantities = &piece.quantities;
    for (const auto& item : *quantities)
        if (item.quote && item.quote->quantity == order.quantity) return item.quote->cost;
    throw LedgerError(LedgerError::Kind::unfit,
                      fmt::format("quote {}: its part answer.json has no cost of {}; run `flutebook verify`",
                                  quote.number, order.quantity));
}

void refuse_other_currency(const plant::Plant& then, const plant::Plant& today) {
    if (then.currency == today.currency) return;
    throw InputError(InputError::Whose::plant,
                     {fmt::format("{}/plant.yaml: currency: the quote was made in another: found {}, and {} in the "
                                  "quote; compare them by hand",
                                  today.folder, today.currency, then.currency)});
}

}  // namespace

OrderFile order_file(const ledger::Store& store, const plant::Plant& today, const std::string& number) {
    const ledger::Snapshot moment(store);
    auto order = taken_order(store, today, number);
    if (!order)
        throw LedgerError(
            LedgerError::Kind::refused,
            fmt::format("{}: no such order: found '{}'; name one that `flutebook order` took", store.file(), number));
    if (!order->bought_from.empty())
        throw LedgerError(LedgerError::Kind::refused,
                          fmt::format("order {}: cannot be costed as made: its board {} is bought from {}, and sheets "
                                      "that are bought are not kept in the ledger; for what it should cost: "
                                      "`flutebook quote show {}`",
                                      number, order->board, order->bought_from, order->quote));
    auto actual = production::actual_of(*order, ledger::entries_of_order(store, number));
    std::vector<std::string> lines;
    for (const auto& missing : production::what_is_missing(*order, actual))
        lines.push_back(
            fmt::format("order {}: cannot be costed before it is made: missing {}; post them", number, missing));
    if (!lines.empty()) throw LedgerError(LedgerError::Kind::refused, std::move(lines));
    auto quote = saved_quotes::saved_quote(store, order->quote);
    return {std::move(*order), std::move(actual), std::move(quote)};
}

std::vector<std::string> machines_of(const OrderFile& file) {
    std::vector<std::string> result;
    for (const auto& run : file.actual.web) result.push_back(run.corrugator);
    for (const auto& step : file.actual.steps)
        for (const auto& run : step) result.push_back(run.converter);
    return result;
}

Money cost_per_thousand(Money cost, double boxes) {
    const auto result = Money::rounded(cost.to_double() / boxes * 1000, all_decimals);
    if (!result) throw ModelError("the order's unit cost is too large to be kept: no amount may reach 9e14");
    return *result;
}

answers::OrderCost order_answer(const engine::Engine& engine, const saved_quotes::QuotedPlant& quoted,
                                const OrderFile& file, const StageCostings& costings, const plant::Plant& today) {
    refuse_other_currency(quoted.plant, today);
    answers::OrderCost result{};
    result.order = file.order;
    result.request = quoted.request.number;
    result.currency = quoted.plant.currency;
    result.boxes_made = file.actual.boxes();
    result.days = file.actual.days();
    result.cost = by_stage(costings, [](const Costing& costing) { return costing.cost; });
    result.quoted_per_thousand = cost_per_thousand(result.cost.quoted, file.order.quantity);
    result.paid_per_thousand = cost_per_thousand(result.cost.paid, result.boxes_made);
    result.saved_cost = saved_cost(file.quote, file.order);
    result.plugins = saved_quotes::changed_plugins(file.quote, engine.graph());
    result.steps = steps_of(file, costings);
    result.lines = lines_of(engine.graph(), costings);
    result.inputs = inputs_of(engine.graph(), file.order, costings);
    result.mass = mass_of(engine.graph(), file, costings);
    return result;
}

answers::OrderCost order_cost(const engine::Engine& engine, const saved_quotes::QuotedPlant& quoted,
                              const OrderFile& file, const plant::Plant& today) {
    return order_answer(engine, quoted, file, cost_stages(engine, quoted, file.order, file.actual, today), today);
}

}  // namespace flutebook::services
