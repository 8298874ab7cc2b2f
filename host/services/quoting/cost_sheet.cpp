#include "host/services/quoting/cost_sheet.hpp"

#include <fmt/format.h>

#include <cmath>
#include <cstdint>
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
[[noreturn]] void refuse(const Row& row, const std::string& why) {
    const orders::Request& request = *row.order->request;
    throw InputError(InputError::Whose::request, {fmt::format("{}: request {} at {:.0f}: {}", request.place.file,
                                                              request.number, row.order->quantity, why)});
}

Money kept(const Row& row, const char* what, const std::optional<Money>& amount, double found) {
    if (!amount)
        refuse(row,
               fmt::format("the {} is too large to be kept: found {:.6g}, where no amount may reach {:g}; lower the "
                           "prices and rates of the plant's files",
                           what, found, Money::most));
    return *amount;
}

Money kept(const Row& row, const char* what, double amount) {
    return kept(row, what, Money::rounded(amount, all_decimals), amount);
}

// From the cost before it was rounded: a price must not depend on how a cost is printed.
Money kept_price(const Row& row, double cost) {
    const double margin = row.order->request->margin;
    return kept(row, "price per thousand", price(cost, margin, row.order->plant->currency_minor_units),
                cost / (1 - margin));
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
        const Money cost = kept(row, "cost of waste", centres[step].loss_cost);
        quote.waste_by_step.push_back({step_name(row, step), centres[step].intake_kg, centres[step].loss_kg, cost});
        quote.waste_cost += cost;
    }
    for (const answers::CostLine& line : quote.lines)
        if (line.cost_class == CostClass::recovery) quote.recovery += -line.amount;
}

// Net of recovery.
Money per_unit_cost(const answers::Quote& quote) {
    Money result;
    for (const answers::CostLine& line : quote.lines)
        if (line.behaviour == contract::Behaviour::per_unit || line.cost_class == CostClass::recovery)
            result += line.amount;
    return result;
}

void add_unit_costs(answers::Quote& quote, const Row& row) {
    const double cost = quote.cost.to_double();
    const double per_thousand = cost / quote.quantity * 1000;
    quote.cost_per_thousand = kept(row, "cost per thousand", per_thousand);
    quote.cost_per_m2 = kept(row, "cost per m2", cost / (quote.quantity * quote.blank.area_m2));
    quote.cost_per_tonne = kept(row, "cost per tonne", cost / (quote.mass.product_kg / 1000));
    quote.price_per_thousand = kept_price(row, per_thousand);
    quote.contribution_per_thousand =
        contribution(quote.price_per_thousand, per_unit_cost(quote), static_cast<std::int64_t>(quote.quantity));
}

void check_product(const answers::Quote& quote, const Row& row) {
    const double kg = quote.mass.product_kg;
    if (std::isfinite(kg) && kg > 0) return;
    refuse(row, fmt::format("the boxes have no mass: found {} kg; correct the measures, or the board's grammage", kg));
}

// Settings that are each within their range can be wrong together: the scrap brings more than everything costs.
void check_price(const answers::Quote& quote, const Row& row) {
    if (quote.cost >= Money{} && quote.price_per_thousand >= Money{}) return;
    refuse(row,
           fmt::format("the price is below zero: found a cost of {} and a price of {} a thousand; correct what the "
                       "scrap brings, or the other prices of the plant's files",
                       quote.cost.to_double(), quote.price_per_thousand.to_double()));
}

}  // namespace

answers::Quote cost_sheet(const Engine& engine, const Row& row, const Costing& costing) {
    const geometry::Candidate& made_by = *row.candidate;
    const geometry::Layout& layout = *row.order->layout;
    answers::Quote quote{};
    quote.quantity = row.order->quantity;
    quote.corrugator = made_by.corrugator->code;
    quote.route = made_by.route_codes();
    static_cast<orders::SheetCut&>(quote) = made_by.cut();
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
    check_product(quote, row);
    add_unit_costs(quote, row);
    check_price(quote, row);
    return quote;
}

std::optional<base::Warning> price_warning(const orders::Request& request, const answers::Quote& quote) {
    if (quote.price_per_thousand >= quote.cost_per_thousand) return std::nullopt;
    return base::Warning{
        base::place_text(request.places, "margin", {request.place.file}),
        fmt::format("the price at {:.0f} is below the cost: found {} where a thousand cost {}; raise "
                    "the margin",
                    quote.quantity, quote.price_per_thousand.to_double(), quote.cost_per_thousand.to_double())};
}

Money contribution(Money price_per_thousand, Money per_unit_cost, std::int64_t quantity) {
    // A thousand cost `whole + above / quantity` ten-thousandths. Integers throughout, so that a tie is seen.
    const std::int64_t cost = per_unit_cost.ten_thousandths();
    const std::int64_t rest = cost % quantity * 1000;
    std::int64_t whole = cost / quantity * 1000 + rest / quantity;
    std::int64_t above = rest % quantity;
    if (above < 0) {
        above += quantity;
        --whole;
    }
    const std::int64_t result = price_per_thousand.ten_thousandths() - whole;
    const bool is_lower = 2 * above > quantity || (2 * above == quantity && result <= 0);
    return Money::of_ten_thousandths(is_lower ? result - 1 : result);
}

std::optional<Money> price(double cost, double margin, int minor_units) {
    return Money::rounded(cost / (1 - margin), minor_units);
}

}  // namespace flutebook::services
