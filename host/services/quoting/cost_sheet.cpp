#include "host/services/quoting/cost_sheet.hpp"

#include <numeric>

#include "host/base/errors.hpp"
#include "host/engine/costing/quantity_centre.hpp"
#include "host/plant/machine_list.hpp"

namespace flutebook::services {

namespace {

using contract::CostClass;
using engine::Costing;
using engine::Engine;
using engine::Row;

constexpr int all_decimals = 4;
constexpr const char* too_large = "the order's unit cost is too large to be kept: no amount of a quote may reach 9e14";

Money kept(double amount, int decimals) {
    const auto result = Money::rounded(amount, decimals);
    if (!result) throw ModelError(too_large);
    return *result;
}

// From the cost before it was rounded: a price must not depend on how a cost is printed.
Money kept_price(double cost, const Row& row) {
    const auto result = price(cost, row.order->request->margin, row.order->plant->currency_minor_units);
    if (!result) throw ModelError(too_large);
    return *result;
}

answers::MassBalance balance(const Engine& engine, const Row& row, const Costing& costing) {
    answers::MassBalance result{};
    result.issued_kg = std::accumulate(costing.issued_kg.begin(), costing.issued_kg.end(), 0.0);
    result.adhesive_kg = costing.adhesive_kg;
    const geometry::Layout& layout = *row.order->layout;
    result.product_kg = row.order->quantity * layout.blank.area_m2 * layout.board.grammage_gsm / 1000;
    const auto& causes = engine.graph().models[engine.graph().shedder].losses;
    for (std::size_t c = 0; c < causes.size(); ++c) {
        const auto& by_step = costing.losses[c];
        answers::MassBalance::Cause cause{causes[c].cause, causes[c].title, {by_step.begin(), by_step.end() - 1}, 0};
        cause.total_kg = std::accumulate(by_step.begin(), by_step.end(), 0.0);
        result.loss_kg += cause.total_kg;
        result.losses.push_back(std::move(cause));
    }
    return result;
}

std::string step_name(const Row& row, std::size_t step) {
    return plant::machine_code(*row.order->plant, engine::machine_index(row, step));
}

std::vector<answers::CostLine> lines(const Engine& engine, const Row& row, const Costing& costing) {
    std::vector<answers::CostLine> result;
    for (const engine::LineAmount& given : costing.lines) {
        const contract::Model& model = engine.graph().models[given.model];
        const contract::Line& line = model.lines[given.line];
        std::string ply_name;
        if (given.ply) ply_name = row.order->plant->papers[row.order->layout->board.plies[*given.ply].paper].code;
        result.push_back({model.id, line.name, line.title, line.unit, line.cost_class, line.behaviour, given.step,
                          step_name(row, given.step), given.ply, std::move(ply_name), given.quantity, given.rate,
                          given.amount});
    }
    return result;
}

void add_waste(answers::Quote& quote, const Engine& engine, const Row& row, const Costing& costing) {
    const auto centres = engine::centres_of(engine.graph(), costing);
    for (std::size_t step = 0; step < centres.size(); ++step) {
        const Money cost = kept(centres[step].loss_cost, all_decimals);
        quote.waste_by_step.push_back({step_name(row, step), centres[step].intake_kg, centres[step].loss_kg, cost});
        quote.waste_cost += cost;
    }
    for (const answers::CostLine& line : quote.lines)
        if (line.cost_class == CostClass::recovery) quote.recovery += -line.amount;
}

void add_unit_costs(answers::Quote& quote, const Row& row) {
    const double cost = quote.cost.to_double();
    const double per_thousand = cost / quote.quantity * 1000;
    quote.cost_per_thousand = kept(per_thousand, all_decimals);
    quote.cost_per_m2 = kept(cost / (quote.quantity * quote.blank.area_m2), all_decimals);
    quote.cost_per_tonne = kept(cost / (quote.mass.product_kg / 1000), all_decimals);
    quote.price_per_thousand = kept_price(per_thousand, row);
    Money per_unit;
    for (const answers::CostLine& line : quote.lines)
        if (line.behaviour == contract::Behaviour::per_unit || line.cost_class == CostClass::recovery)
            per_unit += line.amount;
    quote.contribution_per_thousand =
        quote.price_per_thousand - kept(per_unit.to_double() / quote.quantity * 1000, all_decimals);
}

}  // namespace

answers::Quote cost_sheet(const Engine& engine, const Row& row, const Costing& costing) {
    const geometry::Candidate& made_by = *row.candidate;
    const geometry::Layout& layout = *row.order->layout;
    answers::Quote quote{};
    quote.quantity = row.order->quantity;
    quote.corrugator = made_by.corrugator->code;
    quote.route = made_by.route_codes();
    static_cast<orders::SheetCut&>(quote) = made_by;
    quote.trim_mm = made_by.trim_mm;
    quote.nx = made_by.nx;
    quote.ny = made_by.ny;
    quote.blank = layout.blank;
    quote.board_grammage_gsm = layout.board.grammage_gsm;
    quote.web_length_m = costing.web_length_m;
    quote.web_area_m2 = costing.web_area_m2;
    quote.fed.assign(costing.fed.begin(), costing.fed.end() - 1);
    quote.good.assign(costing.good.begin(), costing.good.end() - 1);
    quote.mass = balance(engine, row, costing);
    quote.lines = lines(engine, row, costing);
    quote.cost = costing.cost;
    add_waste(quote, engine, row, costing);
    add_unit_costs(quote, row);
    return quote;
}

std::optional<Money> price(double cost, double margin, int minor_units) {
    return Money::rounded(cost / (1 - margin), minor_units);
}

}  // namespace flutebook::services
