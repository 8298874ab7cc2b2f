// Amounts keep all four places and masses are rounded together, so that every sum on the page can be done again by
// hand.
#include "host/month_reports/order_cost_report.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstdint>

#include "host/answers/changed_plugin.hpp"
#include "host/base/date.hpp"
#include "host/base/parts.hpp"
#include "host/drawings/shown_units.hpp"
#include "host/render/number_text.hpp"
#include "host/reports/building.hpp"
#include "host/reports/labels.hpp"
#include "host/reports/sheet_context.hpp"

namespace flutebook::month_reports {

using namespace reports;

namespace {

using answers::OrderCost;
using answers::Stages;
using contract::CostClass;

constexpr int price_decimals = 6;
const char* const total_row = "total";

// "boxes"; "pieces" of a set; "sheets" where sheets are sold as sheets.
std::string pieces_of(const OrderCost& answer) {
    if (!answer.order.piece.empty()) return "pieces";
    return answer.order.route.empty() ? "sheets" : "boxes";
}

ReportHeading heading(const plant::Plant& plant, const OrderCost& answer) {
    const auto& order = answer.order;
    const auto first = base::to_string(answer.days.front());
    const auto last = base::to_string(answer.days.back());
    return {order.customer.empty() ? order.number : order.number + "  " + order.customer,
            plant.name,
            {{"quote", {order.quote}},
             {"request", {answer.request}},
             {"quantity", {render::number_text(order.quantity, 0)}},
             {"style", {order.style}},
             {"board", {order.board}},
             {"made", {first == last ? "on " + first : first + " to " + last}},
             {money_in_label, {answer.currency}}}};
}

// What a reader must know before believing a figure.
ReportSection warnings(const OrderCost& answer) {
    ReportSection section;
    const auto add = [&](std::string text) { section.blocks.emplace_back(Note{std::move(text), Note::Kind::warning}); };
    if (!answer.order.lost_otherwise_by.empty()) add(quoted_otherwise_text(answer.order.lost_otherwise_by));
    for (const auto& plugin : answer.plugins) add("plugin " + answers::changed_plugin_text(plugin));
    if (answer.cost.quoted != answer.saved_cost)
        add(fmt::format(
            "the quote costs {} when worked out today, but was saved with {}; the figures below start from today's",
            render::money_text(answer.cost.quoted), render::money_text(answer.saved_cost)));
    for (const auto& step : answer.steps)
        if (step.ran.machines.size() > 1)
            add(fmt::format("{} machines ran in place of {}: all is costed at the rates of {}, which ran most",
                            step.ran.machines.size(), step.ran.quoted, step.ran.costed));
        else if (step.ran.costed != step.ran.quoted)
            add(fmt::format("{} was quoted, {} ran", step.ran.quoted, step.ran.costed));
    return section;
}

ReportSection difference_section(const OrderCost& answer) {
    ReportTable table{"quoted against actual",
                      {name_column(), number_column(pieces_of(answer)), number_column("", answer.currency),
                       number_column("per thousand")}};
    const auto add = [&](RowKind kind, const char* title, double pieces, Money cost, Money per_thousand) {
        table.add(kind, {title, Number{pieces, 0}, Amount{cost}, Amount{per_thousand}});
    };
    const double quoted = answer.order.quantity;
    add(RowKind::item, "quoted", quoted, answer.cost.quoted, answer.quoted_per_thousand);
    add(RowKind::item, "actual", answer.boxes_made, answer.cost.paid, answer.paid_per_thousand);
    add(RowKind::total, "difference", answer.boxes_made - quoted, answers::variances_of(answer.cost).total(),
        answer.paid_per_thousand - answer.quoted_per_thousand);
    return {"Quoted against actual", {table}};
}

ReportSection why_section(const OrderCost& answer) {
    const auto variances = answers::variances_of(answer.cost);
    ReportTable table{"why", {text_column(), name_column(), number_column("", answer.currency)}};
    table.add({"volume", "more or fewer " + pieces_of(answer) + " made than quoted", Amount{variances.volume}});
    table.add({"yield", "converters: setup, rejects, hours, and the sheets used up", Amount{variances.yield}});
    table.add({"usage", "corrugator: metres, roll widths and hours to make those sheets", Amount{variances.usage}});
    table.add({"price", "paper prices on the days of production", Amount{variances.price}});
    table.add(RowKind::total, {total_row, {}, Amount{variances.total()}});
    return {"Why", {table}};
}

// The four differences, in the order in which every table here has them.
const std::vector<const char*> difference_titles = {"volume", "yield", "usage", "price"};

std::vector<Cell> difference_cells(const Stages& cost) {
    const auto variances = answers::variances_of(cost);
    return {Amount{variances.volume}, Amount{variances.yield}, Amount{variances.usage}, Amount{variances.price}};
}

std::vector<TableColumn> around_differences(const TableColumn& name, const std::vector<const char*>& before,
                                            const char* after) {
    std::vector<TableColumn> columns = {name};
    for (const char* title : before) columns.push_back({title});
    for (const char* title : difference_titles) columns.push_back({title});
    columns.push_back({after});
    return columns;
}

std::vector<Cell> stage_cells(const std::string& title, const Stages& cost) {
    std::vector<Cell> cells = {title, Amount{cost.quoted}};
    for (Cell& cell : difference_cells(cost)) cells.push_back(std::move(cell));
    cells.emplace_back(Amount{cost.paid});
    return cells;
}

ReportSection lines_section(const OrderCost& answer) {
    ReportTable table{"lines", around_differences(name_column(), {"quoted"}, "actual"), {}};
    Stages sum;
    for (const CostClass cost_class : cost_classes) {
        bool is_first = true;
        for (const auto& line : answer.lines) {
            if (line.cost_class != cost_class) continue;
            if (is_first) table.add(RowKind::group, {contract::to_text(cost_class)});
            is_first = false;
            table.add(stage_cells(line.title, line.cost), 1);
            sum += line.cost;
        }
    }
    table.add(RowKind::total, stage_cells(net_cost_label, sum));
    return {"Line by line, " + answer.currency, {table}};
}

std::string name_of(const answers::InputVariance& input) {
    return input.ply ? fmt::format("{} ply {}", input.material, *input.ply + 1) : input.material + ", dry";
}

ReportTable input_masses(const drawings::ShownUnits& units, const OrderCost& answer) {
    const auto mass = units.of("kg");
    const auto price = units.of("money/kg");
    ReportTable table{"material masses",
                      {name_column(), number_column("quoted", mass.name), number_column("standard", mass.name),
                       number_column("allowed", mass.name), number_column("used", mass.name),
                       number_column("standard", price.name), number_column("actual", price.name)}};
    for (const auto& item : answer.inputs) {
        const auto& input = item.input;
        const auto weighed = [&](double kg) { return Number{mass(kg), 2}; };
        const auto priced = [&](double of_kg) {
            return Number{price(of_kg), price_decimals, Number::Form::significant};
        };
        table.add({name_of(item), weighed(input.quoted), weighed(input.standard), weighed(input.allowed),
                   weighed(input.used), priced(input.standard_price), priced(input.actual_price)});
    }
    return table;
}

ReportSection inputs_section(const drawings::ShownUnits& units, const OrderCost& answer) {
    ReportTable costs{"material costs", around_differences(name_column(answer.currency), {}, total_row), {}};
    const auto add = [&](RowKind kind, const std::string& name, const Stages& cost) {
        std::vector<Cell> cells = difference_cells(cost);
        cells.insert(cells.begin(), name);
        cells.emplace_back(Amount{answers::variances_of(cost).total()});
        costs.add(kind, std::move(cells));
    };
    for (const auto& item : answer.inputs) add(RowKind::item, name_of(item), item.cost);
    add(RowKind::item, "all other cost", answer.other_cost());
    add(RowKind::total, total_row, answer.cost);
    return {fmt::format("By material; standard for the {} made, allowed for the good sheets made", pieces_of(answer)),
            {input_masses(units, answer), costs}};
}

std::string machines_text(const answers::StepRan& ran) {
    std::string result;
    for (const auto& machine : ran.machines) result += (result.empty() ? "" : ", ") + machine.code;
    return result;
}

ReportSection production_section(const drawings::ShownUnits& units, const OrderCost& answer) {
    ReportTable table{"production",
                      {text_column("quoted on"), name_column("ran on"), text_column(), number_column("fed"),
                       number_column("setup"), number_column("lost"), number_column("good")}};
    const drawings::ShownUnit& length = units.web_length;
    for (std::size_t k = 0; k < answer.steps.size(); ++k) {
        const auto& step = answer.steps[k];
        const auto fed = [&](double amount) {
            return k == 0 ? Number{length(amount), length.decimals, Number::Form::fixed, length.name}
                          : Number{amount, 0};
        };
        const auto add = [&](const std::string& quoted, const std::string& ran, const std::string& which,
                             const answers::OrderStep::StepPieces& pieces) {
            const Cell lost = k == 0 ? Cell() : Cell(Number{pieces.fed - pieces.setup - pieces.good, 0});
            table.add({quoted, ran, which, fed(pieces.fed), fed(pieces.setup), lost, Number{pieces.good, 0}});
        };
        add(step.ran.quoted, "", "allowed", step.allowed);
        add("", machines_text(step.ran), step.ran.setups > 1 ? fmt::format("{:.0f} runs", step.ran.setups) : "actual",
            step.actual);
    }
    return {fmt::format("Production; allowed for the {} made, actual as posted", pieces_of(answer)), {table}};
}

// The masses of one side as they stand on the page.
struct MassColumn {
    std::int64_t issued, adhesive, product, floor, lost;
    std::vector<std::int64_t> losses;
};

MassColumn mass_column(const answers::OrderMass::Masses& masses, double scale, int decimals) {
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

ReportSection mass_section(const drawings::ShownUnits& units, const OrderCost& answer) {
    const auto& mass = units.mass;
    const auto allowed = mass_column(answer.mass.allowed, mass.scale, mass.decimals);
    const auto actual = mass_column(answer.mass.actual, mass.scale, mass.decimals);
    ReportTable table{
        "mass",
        {name_column(mass.name), number_column("allowed"), number_column("actual"), number_column("difference")}};
    const auto add = [&](RowKind kind, const std::string& title, std::int64_t left, std::int64_t right) {
        const auto number = [&](std::int64_t count) {
            return Number{base::from_units(count, mass.decimals), mass.decimals};
        };
        table.add(kind, {title, number(left), number(right), number(right - left)});
    };
    const auto add_figure = [&](RowKind kind, const std::string& title, std::int64_t MassColumn::*figure) {
        add(kind, title, allowed.*figure, actual.*figure);
    };
    add_figure(RowKind::item, paper_issued_label, &MassColumn::issued);
    add_figure(RowKind::item, dry_adhesive_label, &MassColumn::adhesive);
    add(RowKind::total, "in", allowed.issued + allowed.adhesive, actual.issued + actual.adhesive);
    for (std::size_t c = 0; c < answer.mass.causes.size(); ++c)
        add(RowKind::item, answer.mass.causes[c].title, allowed.losses[c], actual.losses[c]);
    add_figure(RowKind::subtotal, "lost", &MassColumn::lost);
    add_figure(RowKind::item, "not fed to the next machine: on the floor, or miscounted", &MassColumn::floor);
    add_figure(RowKind::item, pieces_of(answer) + " made", &MassColumn::product);
    add(RowKind::total, "out", allowed.lost + allowed.floor + allowed.product,
        actual.lost + actual.floor + actual.product);
    return {fmt::format("Mass; allowed for the {} made, actual as posted", pieces_of(answer)), {table}};
}

// Top to bottom, what lies behind one order's cost.
std::vector<ReportSection> order_sections(const drawings::ShownUnits& units, const OrderCost& answer) {
    std::vector<ReportSection> result;
    ReportSection warned = warnings(answer);
    if (!warned.blocks.empty()) result.push_back(std::move(warned));
    for (ReportSection& section : std::vector<ReportSection>{
             difference_section(answer), why_section(answer), lines_section(answer), inputs_section(units, answer),
             production_section(units, answer), mass_section(units, answer)})
        result.push_back(std::move(section));
    return result;
}

ReportHeading heading(const plant::Plant& plant, const answers::SetCost& answer) {
    const auto first = base::to_string(answer.days.front());
    const auto last = base::to_string(answer.days.back());
    return {answer.customer.empty() ? answer.number : answer.number + "  " + answer.customer,
            plant.name,
            {{"quote", {answer.quote}},
             {"request", {answer.request}},
             {"sets", {render::number_text(answer.sets, 0)}},
             {"made", {first == last ? "on " + first : first + " to " + last}},
             {money_in_label, {answer.currency}}}};
}

// The two lines of a set, then where the difference comes from, piece by piece.
std::vector<ReportSection> set_sections(const answers::SetCost& answer) {
    ReportTable table{
        "quoted against actual",
        {name_column(), number_column("sets"), number_column("", answer.currency), number_column("per thousand")}};
    table.add({"quoted", Number{answer.sets, 0}, Amount{answer.cost.quoted}, Amount{answer.quoted_per_thousand}});
    table.add({"actual", Number{answer.sets_made, 0}, Amount{answer.cost.paid}, Amount{answer.paid_per_thousand}});
    table.add(RowKind::total, {"difference", Number{answer.sets_made - answer.sets, 0},
                               Amount{answers::variances_of(answer.cost).total()},
                               Amount{answer.paid_per_thousand - answer.quoted_per_thousand}});
    ReportTable pieces{"pieces", around_differences(name_column("piece"), {"quoted"}, "actual"), {}};
    for (const OrderCost& piece : answer.pieces) pieces.add(stage_cells(piece.order.piece, piece.cost));
    pieces.add(RowKind::total, stage_cells(total_row, answer.cost));
    return {{"Quoted against actual", {table}}, {"Piece by piece, " + answer.currency, {pieces}}};
}

}  // namespace

Report order_cost_report(const plant::Plant& plant, const OrderCost& answer) {
    const drawings::ShownUnits units(plant);
    Report report{"order", answer.order.number, heading(plant, answer), {}};
    for (ReportSection& section : order_sections(units, answer)) report.sections.push_back(std::move(section));
    return report;
}

Report set_cost_report(const plant::Plant& plant, const answers::SetCost& answer) {
    const drawings::ShownUnits units(plant);
    Report report{"order", answer.number, heading(plant, answer), set_sections(answer)};
    for (const OrderCost& piece : answer.pieces) {
        report.sections.push_back(
            {fmt::format("{}: {} pieces", piece.order.number, render::number_text(piece.order.quantity, 0)),
             {},
             ReportSection::Kind::part,
             piece.order.number});
        for (ReportSection& section : order_sections(units, piece)) report.sections.push_back(std::move(section));
    }
    return report;
}

}  // namespace flutebook::month_reports
