// Amounts keep all four places and masses are rounded together, so that every sum on the page can be done again by
// hand.
#include "host/reports/order_cost_sections.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "host/base/parts.hpp"
#include "host/render/number_text.hpp"
#include "host/render/table.hpp"

namespace flutebook::reports {

namespace {

using contract::CostClass;
using services::Stages;

constexpr std::array<CostClass, 5> classes{CostClass::material, CostClass::energy, CostClass::system,
                                           CostClass::waste_management, CostClass::recovery};
constexpr int price_decimals = 6;

std::vector<std::string> stage_cells(const std::string& title, const Stages& cost) {
    const auto item = services::variances_of(cost);
    return {title,
            render::money_text(cost.quoted),
            render::money_text(item.volume),
            render::money_text(item.yield),
            render::money_text(item.usage),
            render::money_text(item.price),
            render::money_text(cost.paid)};
}

Stages add_class(render::Table& table, const services::OrderCost& answer, CostClass cost_class) {
    Stages sum;
    for (const auto& line : answer.lines) {
        if (line.cost_class != cost_class) continue;
        if (sum == Stages{}) table.add({contract::to_text(cost_class)});
        table.add(stage_cells("  " + line.title, line.cost));
        sum += line.cost;
    }
    return sum;
}

std::string name_of(const services::InputVariance& input_variance) {
    return input_variance.ply ? fmt::format("{} ply {}", input_variance.material, *input_variance.ply + 1)
                              : input_variance.material + ", dry";
}

std::string ran_text(const services::StepRan& ran) {
    std::string result;
    for (const auto& machine : ran.machines) result += (result.empty() ? "" : ", ") + machine.code;
    return result;
}

// The masses of one side as they stand on the page.
struct MassColumn {
    std::int64_t issued, adhesive, product, floor, lost;
    std::vector<std::int64_t> losses;
};

MassColumn mass_column(const services::OrderMass::Masses& masses, double scale, int decimals) {
    MassColumn result{base::in_units(masses.issued * scale, decimals),
                      base::in_units(masses.adhesive * scale, decimals),
                      0,
                      0,
                      0,
                      {}};
    std::vector<double> out = {masses.product * scale, masses.floor * scale};
    for (const double loss : masses.losses) out.push_back(loss * scale);
    const auto parts = base::parts_of(result.issued + result.adhesive, out, decimals);
    result.product = parts[0];
    result.floor = parts[1];
    result.losses.assign(parts.begin() + 2, parts.end());
    for (const auto loss : result.losses) result.lost += loss;
    return result;
}

}  // namespace

std::string pieces_of(const services::OrderCost& answer) {
    return answer.order.route.empty() ? "sheets" : "boxes";
}

std::string difference_section(const services::OrderCost& answer) {
    const auto item = services::variances_of(answer.cost);
    render::Table totals({render::Align::flexible, render::Align::right, render::Align::right, render::Align::right},
                         2);
    totals.add({"", pieces_of(answer), answer.currency, "per thousand"});
    totals.add({"quoted", render::number_text(answer.order.quantity, 0), render::money_text(answer.cost.quoted),
                render::money_text(answer.quoted_per_thousand)});
    totals.add({"actual", render::number_text(answer.boxes_made, 0), render::money_text(answer.cost.paid),
                render::money_text(answer.paid_per_thousand)});
    totals.stroke({1, 2, 3});
    totals.add({"difference", render::number_text(answer.boxes_made - answer.order.quantity, 0),
                render::money_text(item.total()),
                render::money_text(answer.paid_per_thousand - answer.quoted_per_thousand)});
    render::Table table({render::Align::left, render::Align::flexible, render::Align::right}, 2);
    table.add({"", "", answer.currency});
    table.add({"volume", "other " + pieces_of(answer) + " made than were quoted", render::money_text(item.volume)});
    table.add({"yield", "converters: setup, rejects, hours, and the sheets they took for it",
               render::money_text(item.yield)});
    table.add({"usage", "corrugator: metres, roll widths and hours for those sheets", render::money_text(item.usage)});
    table.add({"price", "papers at their prices on the days they ran", render::money_text(item.price)});
    table.stroke({2});
    table.add({"in all", "", render::money_text(item.total())});
    return "Quoted against actual\n" + totals.text() + "\nWhy\n" + table.text();
}

std::string line_variance_section(const services::OrderCost& answer) {
    render::Table table({render::Align::flexible, render::Align::right, render::Align::right, render::Align::right,
                         render::Align::right, render::Align::right, render::Align::right},
                        2);
    table.add({"", "quoted", "volume", "yield", "usage", "price", "actual"});
    Stages sum;
    for (const CostClass cost_class : classes) sum += add_class(table, answer, cost_class);
    table.stroke({1, 2, 3, 4, 5, 6});
    table.add(stage_cells("cost, net of recovery", sum));
    return fmt::format("Line by line, {}\n", answer.currency) + table.text();
}

std::string input_section(const ShownUnits& units, const services::OrderCost& answer) {
    const auto mass = units.of("kg");
    const auto price = units.of("money/kg");
    render::Table quantities({render::Align::flexible, render::Align::right, render::Align::right, render::Align::right,
                              render::Align::right, render::Align::decimal, render::Align::decimal},
                             2);
    quantities.add(
        {mass.name, "quoted", "standard", "allowed", "used", "standard " + price.name, "actual " + price.name});
    render::Table costs({render::Align::flexible, render::Align::right, render::Align::right, render::Align::right,
                         render::Align::right, render::Align::right},
                        2);
    costs.add({answer.currency, "volume", "yield", "usage", "price", "in all"});
    const auto add_cost = [&](const std::string& name, const Stages& cost) {
        const auto item = services::variances_of(cost);
        costs.add({name, render::money_text(item.volume), render::money_text(item.yield),
                   render::money_text(item.usage), render::money_text(item.price), render::money_text(item.total())});
    };
    for (const auto& item : answer.inputs) {
        const auto& input = item.input;
        const auto weighed = [&](double kg) { return render::number_text(mass(kg), 2); };
        quantities.add({name_of(item), weighed(input.quoted), weighed(input.standard), weighed(input.allowed),
                        weighed(input.used),
                        render::significant_number(price(input.standard_price), render::shown_digits, price_decimals),
                        render::significant_number(price(input.actual_price), render::shown_digits, price_decimals)});
        add_cost(name_of(item), item.cost);
    }
    add_cost("all other cost", answer.other_cost());
    costs.stroke({1, 2, 3, 4, 5});
    add_cost("in all", answer.cost);
    return fmt::format("By material: standard for the {} made, allowed for the good sheets made\n", pieces_of(answer)) +
           quantities.text() + "\n" + costs.text();
}

std::string production_section(const ShownUnits& units, const services::OrderCost& answer) {
    render::Table table({render::Align::left, render::Align::flexible, render::Align::left, render::Align::right,
                         render::Align::right, render::Align::right, render::Align::right},
                        2);
    table.add({"quoted on", "ran on", "", "fed", "setup", "lost", "good"});
    for (std::size_t k = 0; k < answer.steps.size(); ++k) {
        const auto& step = answer.steps[k];
        const auto fed = [&](double amount) {
            return k == 0 ? units.web_length.text(amount) : render::number_text(amount, 0);
        };
        const auto add = [&](const std::string& quoted, const std::string& ran, const char* which,
                             const services::OrderStep::StepPieces& step_pieces) {
            table.add({quoted, ran, which, fed(step_pieces.fed), fed(step_pieces.setup),
                       k == 0 ? "" : render::number_text(step_pieces.fed - step_pieces.setup - step_pieces.good, 0),
                       render::number_text(step_pieces.good, 0)});
        };
        add(step.ran.quoted, "", "allowed", step.allowed);
        add("", ran_text(step.ran),
            step.ran.setups > 1 ? fmt::format("{:.0f} runs", step.ran.setups).c_str() : "actual", step.actual);
    }
    return fmt::format("Production, allowed for the {} made and as posted\n", pieces_of(answer)) + table.text();
}

std::string order_mass_section(const ShownUnits& units, const services::OrderCost& answer) {
    const auto& mass = units.mass;
    const auto allowed = mass_column(answer.mass.allowed, mass.scale, mass.decimals);
    const auto actual = mass_column(answer.mass.actual, mass.scale, mass.decimals);
    render::Table table({render::Align::flexible, render::Align::right, render::Align::right, render::Align::right}, 2);
    const auto add = [&](const std::string& title, std::int64_t left, std::int64_t right) {
        const auto text = [&](std::int64_t count) {
            return render::number_text(base::from_units(count, mass.decimals), mass.decimals);
        };
        table.add({title, text(left), text(right), text(right - left)});
    };
    table.add({mass.name, "allowed", "actual", "more"});
    add("paper issued", allowed.issued, actual.issued);
    add("adhesive, dry", allowed.adhesive, actual.adhesive);
    table.stroke({1, 2, 3});
    add("in", allowed.issued + allowed.adhesive, actual.issued + actual.adhesive);
    table.say("");
    for (std::size_t c = 0; c < answer.mass.causes.size(); ++c)
        add(answer.mass.causes[c].title, allowed.losses[c], actual.losses[c]);
    table.stroke({1, 2, 3});
    add("lost", allowed.lost, actual.lost);
    add("never fed on: left on the floor, or miscounted", allowed.floor, actual.floor);
    add(pieces_of(answer) + " made", allowed.product, actual.product);
    table.stroke({1, 2, 3});
    add("out", allowed.lost + allowed.floor + allowed.product, actual.lost + actual.floor + actual.product);
    return fmt::format("Mass, allowed for the {} made and as posted\n", pieces_of(answer)) + table.text();
}

}  // namespace flutebook::reports
