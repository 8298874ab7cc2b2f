// Amounts keep all four places and masses are rounded together, so that every sum on a sheet can be done again by hand.
//
// Figures are numbered in the order of the walk, so that a figure that is reached again is referred to by its number.
#include "host/reports/quote_sections.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>

#include "host/answers/made_on.hpp"
#include "host/base/place.hpp"
#include "host/render/number_text.hpp"
#include "host/reports/building.hpp"
#include "host/reports/labels.hpp"
#include "host/reports/layout_drawings.hpp"
#include "host/reports/mass_figures.hpp"
#include "host/reports/not_in_price.hpp"
#include "host/reports/price_rules.hpp"

namespace flutebook::reports {

namespace {

using answers::CostLine;
using answers::Quote;
using contract::CostClass;
using explain::TracedFigure;
using explain::Trail;

constexpr int quantity_decimals = 5;
constexpr int rate_decimals = 7;

std::string sheet_text(const SheetContext& context, const Quote& quote) {
    const drawings::ShownUnits& units = context.units;
    const std::string size = fmt::format("chop {} x slit {}", units.length(quote.chop_mm), units.length(quote.slit_mm));
    if (context.pieces() == "sheets") return size;
    if (quote.ups <= 1) return size + ", one box a sheet";
    return fmt::format("{}, {} boxes a sheet: {} along the chop x {} across the web", size, quote.ups, quote.nx,
                       quote.ny);
}

std::string web_text(const drawings::ShownUnits& units, const Quote& quote) {
    return fmt::format("roll {}, {} {}, trim {} ({} of the roll width)", units.exact_length(quote.roll_width_mm),
                       quote.outs, quote.outs == 1 ? "out" : "outs", units.length(quote.trim_mm),
                       render::percent_text(quote.trim_mm / quote.roll_width_mm, 2));
}

ReportSection layout_section(const SheetContext& context, const Quote& quote) {
    const drawings::ShownUnits& units = context.units;
    const std::string box = context.pieces() == "sheets" ? "sheet" : "box";
    const std::string blank = fmt::format("{}, {} of {}", units.lengths({quote.blank.length_mm, quote.blank.width_mm}),
                                          units.area.text(quote.blank.area_m2), box);
    const std::string board = fmt::format("{}, {}", context.plant.boards[context.request.board].code,
                                          units.grammage.text(quote.board_grammage_gsm));
    Facts facts{{"board", {board}}, {"blank", {blank}}, {"sheet", {sheet_text(context, quote)}}};
    render::Drawings drawn{{sheet_drawing(context, quote)}};
    if (!quote.is_bought) {
        facts.push_back({"web", {web_text(units, quote)}});
        drawn.items.push_back(web_drawing(context, quote));
    }
    facts.push_back({"route", {route_text(quote)}});
    return {"Layout", {std::move(facts), std::move(drawn)}};
}

double lost_kg(const Quote& quote, const std::string& cause, std::size_t step) {
    for (const auto& loss : quote.mass.losses)
        if (loss.cause == cause && step < loss.by_step_kg.size()) return loss.by_step_kg[step];
    return 0;
}

// Setup sheets and rejects of a step are pieces of one mass, so their masses stand as their numbers do.
double setup_pieces(const Quote& quote, std::size_t step) {
    const double setup_kg = lost_kg(quote, "setup", step);
    const double lost = setup_kg + lost_kg(quote, "rejects", step);
    return lost > 0 ? std::round((quote.fed[step] - quote.good[step]) * setup_kg / lost) : 0;
}

ReportSection run_section(const SheetContext& context, const Quote& quote) {
    ReportTable table{"run",
                      {name_column(), number_column("fed"), number_column("setup"), number_column("rejected"),
                       number_column("good"), text_column()}};
    const drawings::ShownUnit &length = context.units.web_length, &area = context.units.area;
    const std::size_t parting = parting_step(context.plant, quote);
    for (std::size_t step = 0; step < quote.good.size(); ++step) {
        const bool are_sheets = step < parting || (step == parting && quote.ups > 1) || quote.route.empty();
        const Number good{quote.good[step], 0};
        if (step == 0) {
            const drawings::ShownUnit& unit = quote.is_bought ? area : length;
            const double come_in = quote.is_bought ? quote.web_area_m2 : quote.web_length_m;
            const Number web{unit(come_in), length.decimals, Number::Form::fixed, unit.name};
            table.add({maker_text(quote), web, {}, {}, good, "sheets"});
            continue;
        }
        const double setup = setup_pieces(quote, step);
        table.add({machine_at(quote, step), Number{quote.fed[step], 0}, Number{setup, 0},
                   Number{quote.fed[step] - quote.good[step] - setup, 0}, good, are_sheets ? "sheets" : "boxes"});
    }
    return {"Run", {table}};
}

ReportSection mass_section(const SheetContext& context, const Quote& quote) {
    const drawings::ShownUnit& mass = context.units.mass;
    const std::vector<LostMass> losses = losses_of(quote);
    const MassFigures kg = mass_figures(quote, mass.scale, mass.decimals);
    const MassFigures share = mass_shares(quote);
    ReportTable table{"mass",
                      {name_column(), text_column(), number_column("", mass.name), number_column("", of_total_label)}};
    const auto add = [&](RowKind kind, const std::string& title, std::int64_t MassFigures::*figure) {
        table.add(kind, {title, {}, kg.number(kg.*figure), share.percentage(share.*figure)});
    };
    add(RowKind::item, quote.is_bought ? board_bought_label : paper_issued_label, &MassFigures::issued);
    add(RowKind::item, dry_adhesive_label, &MassFigures::adhesive);
    table.add(RowKind::total,
              {"in", {}, kg.number(kg.issued + kg.adhesive), share.percentage(share.issued + share.adhesive)});
    for (std::size_t i = 0; i < losses.size(); ++i)
        table.add({losses[i].title, losses[i].step ? machine_at(quote, *losses[i].step) : "", kg.number(kg.losses[i]),
                   share.percentage(share.losses[i])});
    add(RowKind::subtotal, "lost", &MassFigures::lost);
    add(RowKind::item, context.pieces() + " shipped", &MassFigures::product);
    table.add(RowKind::total,
              {"out", {}, kg.number(kg.lost + kg.product), share.percentage(share.lost + share.product)});
    return {"Mass", {table, Facts{{"waste", {waste_rate_text(quote, context.pieces())}}}}};
}

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

void add_line(ReportTable& table, const drawings::ShownUnits& units, const CostLine& line) {
    const drawings::ShownUnit shown = units.of(line.unit);
    const Number quantity{shown(line.quantity), quantity_decimals, Number::Form::significant, shown.name};
    const Number rate{line.rate / shown.scale, rate_decimals, Number::Form::significant};
    table.add({line.title, line.ply ? fmt::format("{} ply {}", line.ply_name, *line.ply + 1) : line.step_name,
               contract::to_text(line.behaviour), quantity, rate, Amount{line.amount}},
              1);
    table.rows.back().figure = line.line;
}

void add_class(ReportTable& table, const drawings::ShownUnits& units, const Quote& quote, CostClass cost_class) {
    const std::vector<const CostLine*> lines = lines_of(quote, cost_class);
    if (lines.empty()) return;
    table.add(RowKind::group, {contract::to_text(cost_class)});
    Money sum;
    for (const CostLine* line : lines) {
        add_line(table, units, *line);
        sum += line->amount;
    }
    table.add(RowKind::subtotal,
              {fmt::format("{} in all", contract::to_text(cost_class)), {}, {}, {}, {}, Amount{sum}});
    table.rows.back().level = 1;
}

ReportSection cost_section(const SheetContext& context, const Quote& quote) {
    const drawings::ShownUnits& units = context.units;
    ReportTable table{"cost",
                      {unrepeated(name_column("line")), name_column("where"), unrepeated(text_column("charged")),
                       number_column("quantity"), number_column("rate"), number_column("", units.currency)}};
    for (const CostClass cost_class : cost_classes) add_class(table, units, quote, cost_class);
    table.add(RowKind::total, {net_cost_label, {}, {}, {}, {}, Amount{quote.cost}});
    table.rows.back().figure = "cost";
    return {"Cost of the order", {table}};
}

// How far the price pays what the order itself costs in cash.
void add_cash(ReportSection& section, const SheetContext& context, const Quote& quote,
              const answers::CashMargin& cash) {
    auto& price = std::get<ReportTable>(section.blocks.back());
    price.add({"less the per-run cost of a thousand",
               Amount{cash.price_less_cash_per_thousand - quote.contribution_per_thousand}});
    price.add(RowKind::total, {cash_margin_label, Amount{cash.price_less_cash_per_thousand}});
    section.blocks.emplace_back(
        Note{cash.break_even ? fmt::format("Breaks even at {}: they cover their per-unit and per-run cost",
                                           context.order_text(*cash.break_even))
                             : std::string("Breaks even at no quantity: this price does not pay the per-unit cost"),
             Note::Kind::sentence, 1});
}

// A piece of a set has no price.
ReportSection price_section(const SheetContext& context, const Quote& quote) {
    const drawings::ShownUnits& units = context.units;
    const std::vector<TableColumn> columns = {name_column(), number_column("", units.currency)};
    ReportTable costs{"unit cost", columns, {}};
    costs.add({fmt::format("cost per {} shipped", units.cost_area.name), Amount{units.cost_per_area(quote)}});
    costs.add({fmt::format("cost per {} shipped", units.cost_mass.name), Amount{units.cost_per_mass(quote)}});
    costs.add({fmt::format("{} {}", cost_per_thousand_label, context.pieces()), Amount{quote.cost_per_thousand}});
    if (context.counted == SheetContext::Counted::pieces) return {"Unit cost", {costs}};
    ReportTable price{"price", columns, {}};
    std::string of_margin;
    if (context.request.margin && !has_plant_rule(quote.making))
        of_margin = fmt::format(", of which {} % margin", render::brief_number(*context.request.margin * 100, 4));
    price.add({fmt::format("{} {}{}", price_per_thousand_label, context.pieces(), of_margin),
               Amount{quote.price_per_thousand, context.plant.currency_minor_units}});
    price.rows.back().figure = "price";
    price.add({"less the per-unit cost of a thousand, net of recovery",
               Amount{quote.contribution_per_thousand - quote.price_per_thousand}});
    price.add(RowKind::subtotal, {contribution_label, Amount{quote.contribution_per_thousand}});
    ReportSection section{"Price", {costs, price}};
    if (quote.cash) add_cash(section, context, quote, *quote.cash);
    if (has_plant_rule(quote.making))
        section.blocks.emplace_back(Note{rules_text(context, quote.making), Note::Kind::sentence, 1});
    return section;
}

ReportSection waste_section(const SheetContext& context, const Quote& quote) {
    const drawings::ShownUnit& mass = context.units.mass;
    const MassFigures all = mass_figures(quote, mass.scale, mass.decimals);
    ReportTable table{"waste",
                      {name_column(), number_column("intake", mass.name), number_column("lost", mass.name),
                       number_column("", "of intake"), number_column("", context.units.currency)}};
    std::int64_t intake = all.issued + all.adhesive;
    for (std::size_t step = 0; step < quote.waste_by_step.size(); ++step) {
        const auto& waste = quote.waste_by_step[step];
        const std::int64_t lost = step < all.by_step.size() ? all.by_step[step] : 0;  // dispatch loses nothing
        const double share = waste.intake_kg > 0 ? waste.loss_kg / waste.intake_kg : 0;
        table.add({waste.step_name, all.number(intake), all.number(lost), Percentage{share}, Amount{waste.cost}});
        intake -= lost;
    }
    table.add(RowKind::total, {"cost of waste (ISO 14051)", {}, all.number(all.lost), {}, Amount{quote.waste_cost}});
    table.rows.back().figure = "waste_cost";
    table.add({"not deducted: income from recovery", {}, {}, {}, Amount{quote.recovery}});
    return {"Waste", {table}};
}

ReportSection runners_up_section(const SheetContext& context, const Quote& quote) {
    ReportSection section{"Next best ways"};
    if (quote.runners_up.empty()) {
        section.blocks.emplace_back(Note{"none: this is the only way to make it", {}, 1});
        return section;
    }
    ReportTable table{"next best",
                      {name_column(), number_column("cost", context.units.currency), number_column(dearer_by_label)}};
    for (const answers::RunnerUp& runner_up : quote.runners_up)
        table.add({runner_up.candidate, Amount{runner_up.cost}, Amount{runner_up.dearer_by}});
    section.blocks.emplace_back(std::move(table));
    return section;
}

constexpr std::size_t deepest_level = 20;

// Ten significant digits: enough to calculate with, without the rounding error of the last ones.
std::string value_text(double value) {
    return render::significant_number(value, 10, 12);
}

// "flutes.yaml:19:28, 19:38; papers.yaml:9:67": each file once.
std::string places_text(const std::vector<base::Place>& places) {
    std::string result, file;
    for (const base::Place& place : places) {
        const std::string whole = base::place_text(place);
        const bool same = !file.empty() && place.file == file && place.line != 0;
        if (!result.empty()) result += same ? ", " : "; ";
        result += same ? whole.substr(file.size() + 1) : whole;
        file = place.file;
    }
    return result;
}

class TrailWriter {
public:
    TrailWriter(const drawings::ShownUnits& units, const Trail& trail)
        : units_(units), trail_(trail), numbers_(trail.figures.size(), 0) {}

    std::vector<render::Block> notes() {
        go_down(0, 1);
        return std::move(notes_);
    }

private:
    void go_down(std::size_t at, std::size_t depth) {
        const TracedFigure& figure = trail_.figures[at];
        const std::size_t level = std::min(depth, deepest_level);
        const std::string name = figure.name + (figure.where.empty() ? "" : ", " + figure.where);
        if (numbers_[at] != 0) return add(fmt::format("{}: see [{}]", name, numbers_[at]), level);
        numbers_[at] = ++told_;
        const std::string head = figure.charge ? amount_text(figure) : with_unit(figure);
        add(fmt::format("[{}] {} = {}", numbers_[at], name, head), level);
        add(story(figure), level + 2);
        for (const std::size_t input : figure.inputs) go_down(input, depth + 1);
    }

    void add(std::string text, std::size_t level) {
        notes_.emplace_back(Note{std::move(text), Note::Kind::sentence, level});
    }

    std::string with_unit(const TracedFigure& figure) const {
        if (!figure.choice.empty()) return figure.choice;
        const drawings::ShownUnit shown = units_.of(figure.unit);
        return value_text(shown(figure.value)) + (shown.name.empty() ? "" : " " + shown.name);
    }

    std::string amount_text(const TracedFigure& figure) const {
        const drawings::ShownUnit quantity = units_.of(figure.charge->unit);
        const std::string unit = quantity.name.empty() ? "" : " " + quantity.name;
        return fmt::format("{}{} x {} = {} {}", value_text(quantity(figure.charge->quantity)), unit,
                           value_text(figure.charge->rate / quantity.scale), render::number_text(figure.value, 4),
                           units_.currency);
    }

    // Its meaning, the model that gives it, and the place where it was written.
    static std::string story(const TracedFigure& figure) {
        std::string result = figure.meaning;
        const auto add = [&](const std::string& part) {
            if (!result.empty() && !part.empty()) result += "; ";
            result += part;
        };
        if (figure.kind == TracedFigure::Kind::setting)
            add(fmt::format("setting of model {}{}", figure.model, figure.places.empty() ? ", its default" : ""));
        else if (!figure.model.empty())
            add("by model " + figure.model);
        add(places_text(figure.places));
        return result;
    }

    const drawings::ShownUnits& units_;
    const Trail& trail_;
    std::vector<std::size_t> numbers_;  // by figure, from 1; 0 where it was not told yet
    std::size_t told_ = 0;
    std::vector<render::Block> notes_;
};

}  // namespace

SheetSections sheet_sections_by_name(const SheetContext& context, const Quote& quote) {
    return {layout_section(context, quote),    run_section(context, quote),   mass_section(context, quote),
            cost_section(context, quote),      price_section(context, quote), waste_section(context, quote),
            runners_up_section(context, quote)};
}

std::vector<ReportSection> sheet_sections(const SheetContext& context, const Quote& quote) {
    SheetSections all = sheet_sections_by_name(context, quote);
    std::vector<ReportSection> result = {std::move(all.layout), std::move(all.run), std::move(all.mass),
                                         std::move(all.cost), std::move(all.price)};
    std::vector<std::string> missing;
    for (const answers::NotInPrice& item : quote.not_in_price.value_or(std::vector<answers::NotInPrice>{}))
        missing.push_back(missing_text(context, item));
    if (!missing.empty()) result.push_back(not_in_price_section(missing));
    result.push_back(std::move(all.waste));
    result.push_back(std::move(all.runners_up));
    return result;
}

ReportSection explain_section(const drawings::ShownUnits& units, const std::string& figure,
                              const answers::Quote& quote) {
    const std::string name = answers::figure_asked(figure).name;
    ReportSection section{fmt::format("Behind `{}`", name)};
    const auto is_asked = [&](const answers::MassBalance::Cause& cause) { return name.ends_with(cause.cause); };
    const bool is_loss = std::any_of(quote.mass.losses.begin(), quote.mass.losses.end(), is_asked);
    if (quote.trails.empty()) section.title += is_loss ? ": nothing is lost so" : ": it charges nothing here";
    for (const Trail& trail : quote.trails)
        for (render::Block& note : TrailWriter(units, trail).notes()) section.blocks.push_back(std::move(note));
    return section;
}

}  // namespace flutebook::reports
