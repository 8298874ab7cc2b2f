// The lines behind the cost, and what it means for the price. Amounts keep all four places, so that every sum on the
// page can be done again by hand.
#include <fmt/format.h>

#include <array>

#include "host/render/number_text.hpp"
#include "host/render/table.hpp"
#include "host/reports/sections.hpp"

namespace flutebook::reports {

namespace {

using contract::CostClass;
using services::CostLine;
using services::Quote;

constexpr int quantity_decimals = 5;
constexpr int rate_decimals = 7;
constexpr std::array<CostClass, 5> classes{CostClass::material, CostClass::energy, CostClass::system,
                                           CostClass::waste_management, CostClass::recovery};
enum DocumentColumn : std::size_t { title, where, behaviour, quantity, unit, rate, amount };

// The lines of a class; those of one name stand together, in the order they first come.
std::vector<const CostLine*> lines_of(const Quote& quote, CostClass cost_class) {
    std::vector<std::vector<const CostLine*>> names;
    for (const CostLine& line : quote.lines) {
        if (line.cost_class != cost_class) continue;
        std::vector<const CostLine*>* item = nullptr;
        for (auto& name : names)
            if (name.front()->plugin == line.plugin && name.front()->line == line.line) item = &name;
        if (item == nullptr) item = &names.emplace_back();
        item->push_back(&line);
    }
    std::vector<const CostLine*> result;
    for (const auto& name : names) result.insert(result.end(), name.begin(), name.end());
    return result;
}

void add_line(render::Table& table, const ShownUnits& units, const CostLine& line, const CostLine* before) {
    const ShownUnit shown = units.of(line.unit);
    const bool repeats = before != nullptr && before->line == line.line && before->plugin == line.plugin;
    table.add({repeats ? "" : "  " + line.title,
               line.ply ? fmt::format("{} ply {}", line.ply_name, *line.ply + 1) : line.step_name,
               repeats ? "" : contract::to_text(line.behaviour),
               render::significant_number(shown(line.quantity), render::shown_digits, quantity_decimals), shown.name,
               render::significant_number(line.rate / shown.scale, render::shown_digits, rate_decimals),
               render::money_text(line.amount)});
}

Money add_class(render::Table& table, const ShownUnits& units, const Quote& quote, CostClass cost_class) {
    const std::vector<const CostLine*> lines = lines_of(quote, cost_class);
    Money sum;
    if (lines.empty()) return sum;
    table.add({contract::to_text(cost_class)});
    const CostLine* before = nullptr;
    for (const CostLine* line : lines) {
        add_line(table, units, *line, before);
        sum += line->amount;
        before = line;
    }
    table.stroke({amount});
    std::vector<std::string> cells(amount + 1);
    cells[title] = fmt::format("  {} in all", contract::to_text(cost_class));
    cells[amount] = render::money_text(sum);
    table.add(std::move(cells));
    return sum;
}

}  // namespace

std::string cost_section(const SheetContext& enquiry, const Quote& quote) {
    render::Table table({render::Align::flexible, render::Align::flexible, render::Align::left, render::Align::decimal,
                         render::Align::left, render::Align::decimal, render::Align::right},
                        2);
    table.add({"", "", "", "quantity", "", "rate", enquiry.units.currency});
    for (const CostClass cost_class : classes) add_class(table, enquiry.units, quote, cost_class);
    table.stroke({amount});
    std::vector<std::string> cells(amount + 1);
    cells[title] = "cost, net of recovery";
    cells[amount] = render::money_text(quote.cost);
    table.add(std::move(cells));
    return "Cost of the order\n" + table.text();
}

std::string price_section(const SheetContext& enquiry, const Quote& quote) {
    const ShownUnits& units = enquiry.units;
    const int coin = enquiry.plant.currency_minor_units;
    render::Table table({render::Align::flexible, render::Align::decimal}, 2);
    table.add({"", units.currency});
    table.add(
        {fmt::format("cost per {} shipped", units.cost_area.name), render::money_text(units.cost_per_area(quote))});
    table.add(
        {fmt::format("cost per {} shipped", units.cost_mass.name), render::money_text(units.cost_per_mass(quote))});
    table.add({fmt::format("cost per thousand {}", enquiry.pieces()), render::money_text(quote.cost_per_thousand)});
    table.say("");
    table.add({fmt::format("price per thousand {}, of which {} % margin", enquiry.pieces(),
                           render::brief_number(enquiry.request.margin * 100, 4)),
               render::coin_text(quote.price_per_thousand, coin)});
    table.add({"less the per-unit cost of a thousand, net of recovery",
               render::money_text(quote.contribution_per_thousand - quote.price_per_thousand)});
    table.stroke({1});
    table.add({"contribution per thousand", render::money_text(quote.contribution_per_thousand)});
    return "Price\n" + table.text();
}

}  // namespace flutebook::reports
