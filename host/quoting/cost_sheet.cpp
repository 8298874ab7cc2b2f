#include "host/quoting/cost_sheet.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <numeric>

#include "host/base/errors.hpp"
#include "host/engine/costing/quantity_centre.hpp"
#include "host/orders/margin.hpp"
#include "host/plant/machine_list.hpp"
#include "host/quoting/offered_price.hpp"

namespace flutebook::quoting {

namespace {

using contract::CostClass;
using engine::Costing;
using engine::Engine;
using engine::Row;

constexpr int all_decimals = 4;

// A request at one of its quantities, which a refusal names.
struct AskedQuantity {
    const plant::Plant& plant;
    const orders::Request& request;
    double quantity;
};

AskedQuantity asked_of(const Row& row) {
    return {*row.order->plant, *row.order->request, row.order->quantity};
}

[[noreturn]] void refuse(const AskedQuantity& asked, const std::string& why) {
    throw InputError(InputError::Whose::request,
                     {fmt::format("{}: request {} at {:.0f}: {}", asked.request.place.file.text(), asked.request.number,
                                  asked.quantity, why)});
}

Money kept(const AskedQuantity& asked, const char* what, const std::optional<Money>& amount, double found) {
    if (!amount)
        refuse(asked,
               fmt::format("the {} is too large to be kept: found {:.6g}, where no amount may reach {:g}; lower the "
                           "prices and rates of the plant's files",
                           what, found, Money::most));
    return *amount;
}

Money kept(const AskedQuantity& asked, const char* what, double amount) {
    return kept(asked, what, Money::rounded(amount, all_decimals), amount);
}

// From the cost before it was rounded: a price must not depend on how a cost is printed.
OfferedPrice kept_price(const AskedQuantity& asked, double cost) {
    auto price = offered_price(asked.plant, asked.request, asked.quantity, cost);
    if (!price)
        (void)kept(asked, "price per thousand", std::nullopt,
                   cost / (1 - orders::margin_of(asked.plant, asked.request, asked.quantity).share));
    return std::move(*price);
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
        if (given.ply) ply_name = row.order->plant->paper(row.order->layout->board.plies[*given.ply].paper).code;
        result.push_back({model.id, line.name, line.title, line.unit, line.cost_class, line.behaviour, given.step,
                          step_name(row, given.step), given.ply, std::move(ply_name), given.quantity, given.rate,
                          given.amount});
    }
    return result;
}

void add_waste(answers::Quote& quote, const Engine& engine, const Row& row, const Costing& costing) {
    const auto centres = engine::centres_of(engine.graph(), costing);
    for (std::size_t step = 0; step < centres.size(); ++step) {
        const Money cost = kept(asked_of(row), "cost of waste", centres[step].loss_cost);
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

// What the run causes once.
Money per_run_cost(const answers::Quote& quote) {
    Money result;
    for (const answers::CostLine& line : quote.lines)
        if (line.behaviour == contract::Behaviour::per_run && line.cost_class != CostClass::recovery)
            result += line.amount;
    return result;
}

// The parts of a cost that follow from the order alone: by the piece, and once for its run.
struct CashCost {
    Money per_unit, per_run;
};

CashCost cash_cost(const answers::Quote& quote) {
    return {per_unit_cost(quote), per_run_cost(quote)};
}

// What the order brings at its price.
template <typename QuoteOrSet>
void add_sale(QuoteOrSet& quote, const AskedQuantity& asked) {
    const auto sale =
        answers::order_profit(quote.price_per_thousand, quote.cost, quote.quantity, asked.plant.currency_minor_units);
    if (!sale)
        (void)kept(asked, "order value", std::nullopt, quote.price_per_thousand.to_double() * quote.quantity / 1000);
    quote.sale = *sale;
}

// Of a quote or a set.
template <typename QuoteOrSet>
void add_price(QuoteOrSet& quote, const AskedQuantity& asked, const CashCost& cash) {
    const auto quantity = static_cast<std::int64_t>(quote.quantity);
    OfferedPrice offered = kept_price(asked, quote.cost.to_double() / quote.quantity * 1000);
    const Money price = offered.per_thousand;
    quote.price_per_thousand = price;
    quote.making = std::move(offered.making);
    quote.contribution_per_thousand = contribution(price, cash.per_unit, quantity);
    answers::CashMargin margin;
    margin.per_run_cost = cash.per_run;
    margin.price_less_cash_per_thousand = contribution(price, cash.per_unit + cash.per_run, quantity);
    margin.break_even = break_even(price, cash.per_unit, cash.per_run, quantity);
    quote.cash = margin;
    add_sale(quote, asked);
}

void add_unit_costs(answers::Quote& quote, const AskedQuantity& asked) {
    const double cost = quote.cost.to_double();
    quote.cost_per_thousand = kept(asked, "cost per thousand", cost / quote.quantity * 1000);
    quote.cost_per_m2 = kept(asked, "cost per m2", cost / (quote.quantity * quote.blank.area_m2));
    quote.cost_per_tonne = kept(asked, "cost per tonne", cost / (quote.mass.product_kg / 1000));
}

void check_product(const answers::Quote& quote, const AskedQuantity& asked) {
    const double kg = quote.mass.product_kg;
    if (std::isfinite(kg) && kg > 0) return;
    refuse(asked,
           fmt::format("the boxes have no mass: found {} kg; correct the measures, or the board's grammage", kg));
}

// Settings that are each within their range can be wrong together: the scrap brings more than everything costs.
template <typename QuoteOrSet>
void check_price(const QuoteOrSet& quote, const AskedQuantity& asked) {
    if (quote.cost >= Money{} && quote.price_per_thousand >= Money{}) return;
    refuse(asked,
           fmt::format("the price is below zero: found a cost of {} and a price of {} a thousand; correct what the "
                       "scrap brings, or the other prices of the plant's files",
                       quote.cost.to_double(), quote.price_per_thousand.to_double()));
}

// Each missing line of the pieces once; what is invoiced apart for several is added up.
std::vector<answers::NotInPrice> not_in_price_of(const std::vector<const answers::Quote*>& pieces) {
    std::vector<answers::NotInPrice> result;
    for (const answers::Quote* piece : pieces)
        for (const answers::NotInPrice& item : piece->not_in_price.value_or(std::vector<answers::NotInPrice>{})) {
            const auto same = std::find_if(result.begin(), result.end(), [&](const answers::NotInPrice& other) {
                return other.plugin == item.plugin && other.line == item.line && other.setting == item.setting;
            });
            if (same == result.end())
                result.push_back(item);
            else if (item.amount)
                same->amount = same->amount ? *same->amount + *item.amount : *item.amount;
        }
    return result;
}

}  // namespace

answers::Quote cost_sheet(const Engine& engine, const Row& row, const Costing& costing) {
    const geometry::Candidate& made_by = *row.candidate;
    const geometry::Layout& layout = *row.order->layout;
    answers::Quote quote{};
    quote.quantity = row.order->quantity;
    quote.corrugator = made_by.corrugator->code;
    quote.is_bought = made_by.corrugator->is_supplier;
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
    const AskedQuantity asked = asked_of(row);
    check_product(quote, asked);
    add_unit_costs(quote, asked);
    if (!layout.piece.name.empty()) return quote;
    add_price(quote, asked, cash_cost(quote));
    check_price(quote, asked);
    return quote;
}

answers::SetQuote set_sheet(const plant::Plant& plant, const orders::Request& request, double sets,
                            const std::vector<const answers::Quote*>& pieces) {
    answers::SetQuote result{};
    result.quantity = sets;
    CashCost cash;
    for (const answers::Quote* piece : pieces) {
        result.cost += piece->cost;
        result.waste_cost += piece->waste_cost;
        result.recovery += piece->recovery;
        cash.per_unit += per_unit_cost(*piece);
        cash.per_run += per_run_cost(*piece);
    }
    const AskedQuantity asked{plant, request, sets};
    result.cost_per_thousand = kept(asked, "cost per thousand", result.cost.to_double() / sets * 1000);
    add_price(result, asked, cash);
    check_price(result, asked);
    result.not_in_price = not_in_price_of(pieces);
    return result;
}

std::optional<base::Warning> price_warning(const plant::Plant& plant, const orders::Request& request,
                                           const answers::RequestAnswer::Quantity& quantity,
                                           const answers::QuoteOptions& asked) {
    if (!quantity.is_makeable()) return std::nullopt;
    const Money price = quantity.quote ? quantity.quote->price_per_thousand : quantity.set->price_per_thousand;
    const Money cost = quantity.quote ? quantity.quote->cost_per_thousand : quantity.set->cost_per_thousand;
    if (price >= cost) return std::nullopt;
    return base::Warning{
        base::place_text(orders::margin_of(plant, request, quantity.quantity()).place),
        fmt::format("the price at {:.0f} is below the cost: found {} where a thousand cost {}; {}", quantity.quantity(),
                    price.to_double(), cost.to_double(),
                    asked.is_price_given ? "ask for a price that is not below it" : "raise the margin")};
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

std::optional<double> break_even(Money price_per_thousand, Money per_unit_cost, Money per_run_cost,
                                 std::int64_t quantity) {
    const double each =
        price_per_thousand.to_double() / 1000 - per_unit_cost.to_double() / static_cast<double>(quantity);
    if (!(each > 0)) return std::nullopt;
    return std::max(1.0, std::ceil(per_run_cost.to_double() / each - 1e-9));
}

std::optional<Money> price(double cost, double margin, int minor_units) {
    return Money::rounded(cost / (1 - margin), minor_units);
}

}  // namespace flutebook::quoting
