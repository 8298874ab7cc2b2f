// The verdict comes first, the figures behind it follow. Both sides of a difference are shown with as many digits as
// tell them apart.
#include "host/reports/recheck_report.hpp"

#include <fmt/format.h>

#include <cmath>

#include "host/answers/changed_plugin.hpp"
#include "host/base/place.hpp"
#include "host/drawings/shown_units.hpp"
#include "host/render/number_text.hpp"
#include "host/reports/building.hpp"
#include "host/reports/figure_names.hpp"
#include "host/reports/labels.hpp"
#include "host/reports/shared_trim.hpp"

namespace flutebook::reports {

namespace {

using answers::Cause;
using answers::ChangedLine;
using answers::ChangedQuantity;
using answers::Difference;
using answers::Leaf;
using answers::Recheck;
using answers::Reproduction;
using answers::TodaysAnswer;

const char* const was_head = "was";
const char* const now_head = "now";

ReportHeading heading(const Recheck& checked) {
    ReportHeading result{fmt::format("{} rechecked: {}", checked.quote, checked.request),
                         checked.plant.name,
                         {{"saved", {fmt::format("{} by {}", base::utc_day(checked.when), checked.who)}}}};
    if (checked.date) result.facts.push_back({prices_of_label, {base::to_string(*checked.date)}});
    if (checked.new_date) result.facts.push_back({"now at prices of", {base::to_string(*checked.new_date)}});
    result.facts.push_back({money_in_label, {checked.plant.currency}});
    return result;
}

// With a day of its own for today's prices, the files' prices of that day are among what differs.
const char* dated_cause_text(Cause cause) {
    switch (cause) {
        case Cause::nothing_differs:
            return "Nothing differs: at the prices of that day every figure comes out as it was answered.";
        case Cause::plant_files:
            return "Different, by the prices of that day or the plant's files.";
        case Cause::plugins:
            return "Different, by the plugins or the program.";
        case Cause::both:
            return "Different, by the prices of that day or the plant's files, and by the plugins or the program.";
        case Cause::ledger:
        case Cause::unknown:
            break;
    }
    return "Different.";
}

const char* cause_text(Cause cause) {
    switch (cause) {
        case Cause::nothing_differs:
            return "Nothing differs: today every figure comes out as it was answered.";
        case Cause::plant_files:
            return "Different today, by the plant's files.";
        case Cause::plugins:
            return "Different today, by the plugins or the program.";
        case Cause::both:
            return "Different today, by the plant's files and by the plugins or the program.";
        case Cause::ledger:
            return "Different today, by the share of trim that the ledger has now.";
        case Cause::unknown:
            break;
    }
    return "Different today.";
}

const char* reproduction_text(const Recheck& checked) {
    switch (checked.reproduction.ends) {
        case Reproduction::Ends::to_the_byte:
            return "The saved files still give the saved answer, byte for byte.";
        case Reproduction::Ends::otherwise:
            return checked.cause == Cause::nothing_differs || checked.cause == Cause::plant_files ||
                           checked.cause == Cause::ledger
                       ? "The saved files still give every saved figure, but the document has other keys or words."
                       : "The saved files no longer give the saved answer: the plugins or the program are others.";
        case Reproduction::Ends::unfit:
            break;
    }
    return "The saved files no longer fit today's plugins:";
}

void add_items(ReportSection& section, const std::vector<std::string>& texts) {
    for (const std::string& text : texts) section.blocks.emplace_back(Note{text, Note::Kind::item, 1});
}

ReportSection verdict_section(const Recheck& checked) {
    ReportSection section{"",
                          {Note{checked.new_date ? dated_cause_text(checked.cause) : cause_text(checked.cause)},
                           Note{reproduction_text(checked)}}};
    add_items(section, checked.reproduction.complaints);
    if (checked.today.ends == TodaysAnswer::Ends::answered) return section;
    section.blocks.emplace_back(Note{"Today nothing can be answered:"});
    add_items(section, checked.today.complaints);
    return section;
}

ReportSection ladder_section(const Recheck& checked) {
    const int coin = checked.plant.currency_minor_units;
    const auto price = [&](const std::optional<answers::Total>& item) {
        return item ? Cell(Amount{item->price_per_thousand, coin}) : Cell("-");
    };
    ReportTable table{"ladder",
                      {number_column("quantity"), number_column("was"), number_column("now"), number_column("by"),
                       number_column("", "of the old price")}};
    for (const answers::ChangedQuantity& item : checked.today.quantities) {
        if (!item.piece.empty()) continue;
        std::vector<Cell> cells = {Number{item.quantity, 0}, price(item.was), price(item.now)};
        if (item.was && item.now) {
            const Money was = item.was->price_per_thousand;
            const Money by = item.now->price_per_thousand - was;
            const Sign sign = by == Money() ? Sign::negative_only : Sign::always;
            cells.emplace_back(Amount{by, coin, "", sign});
            if (was > Money()) cells.emplace_back(Percentage{by.to_double() / was.to_double(), 2, "", sign});
        }
        table.add(std::move(cells));
    }
    return {"Price per thousand, " + checked.plant.currency, {table}};
}

std::string key_text(const answers::ChangedKey& changed_key) {
    const auto& [path, was, now] = changed_key.difference;
    if (!now) return fmt::format("{}: {}: taken out, was {}", changed_key.file, path, was->text);
    const std::string place = fmt::format("{}:{}:{}: {}", changed_key.file, now->place.line, now->place.column, path);
    if (!was) return fmt::format("{}: added, {}", place, now->text);
    return fmt::format("{}: {} -> {}", place, was->text, now->text);
}

ReportSection keys_section(const Recheck& checked) {
    if (checked.keys.empty()) return {"", {Note{"The plant's files say the same as then."}}};
    ReportSection section{"Changed in the plant's files"};
    for (const answers::ChangedKey& key : checked.keys) add_items(section, {key_text(key)});
    return section;
}

ReportSection plugins_section(const Recheck& checked) {
    if (checked.plugins.empty()) return {"", {Note{"The plugins are the same files."}}};
    ReportSection section{"Changed plugins"};
    for (const answers::ChangedPlugin& plugin : checked.plugins)
        add_items(section, {answers::changed_plugin_text(plugin)});
    return section;
}

// What the ledger said of trim then, and what it says today.
ReportSection trim_section(const Recheck& checked) {
    if (!checked.trim.is_by_ledger()) return {};
    ReportSection section{"Trim shared"};
    const auto add = [&](const char* when, const std::optional<plant::TrimPolicy>& policy) {
        if (!policy) return;
        const std::string origin = trim_origin_text(*policy);
        section.blocks.emplace_back(
            Note{fmt::format("{}: {}{}", when, shared_trim_text(*policy), origin.empty() ? "" : "; " + origin),
                 Note::Kind::sentence, 1});
    };
    add(was_head, checked.trim.was);
    add(now_head, checked.trim.now);
    return section;
}

// The plant's name and currency.
ReportSection plant_section(const Recheck& checked) {
    ReportSection section;
    const auto word = [](const std::optional<answers::Leaf>& leaf) { return leaf ? leaf->text : "-"; };
    for (const answers::Difference& difference : checked.today.heading)
        section.blocks.emplace_back(Note{fmt::format("The {} was {} and is {}.", figure_name(difference.path).title,
                                                     word(difference.was), word(difference.now))});
    return section;
}

constexpr int most_decimals = 7;
constexpr int least_digits = 6;

Number number_of(double value, int digits, const std::string& unit = "", Sign sign = Sign::negative_only) {
    return {value, most_decimals + digits - least_digits, Number::Form::significant, unit, sign, digits};
}

// Digits that tell two numbers apart.
int digits_for(double was, double now) {
    constexpr int all_digits = 17;
    for (int digits = least_digits; digits < all_digits; digits += 2)
        if (was == now || render::whole_text(number_of(was, digits)) != render::whole_text(number_of(now, digits)))
            return digits;
    return all_digits;
}

Amount amount_of(double amount, Sign sign = Sign::negative_only) {
    return {Money::rounded(amount, 4).value_or(Money()), 4, "", sign};
}

std::string word_of(const std::optional<Leaf>& leaf) {
    return leaf ? leaf->text : "-";
}

std::vector<Cell> figure_cells(const Difference& difference, const FigureName& name,
                               const drawings::ShownUnits& units) {
    const std::string& unit_text = (difference.now ? difference.now : difference.was)->unit;
    if (!difference.by() || unit_text.empty()) return {name.title, word_of(difference.was), word_of(difference.now)};
    const double was = *difference.was->number, now = *difference.now->number, by = *difference.by();
    if (unit_text == "money") return {name.title, amount_of(was), amount_of(now), amount_of(by, Sign::always)};
    const drawings::ShownUnit unit = units.of(unit_text);
    const int digits = digits_for(unit(was), unit(now));
    return {name.title, number_of(unit(was), digits, unit.name), number_of(unit(now), digits, unit.name),
            number_of(unit(by), least_digits, unit.name, Sign::always)};
}

// Sums over another layout differ in their last digits, far below the host's tolerance for a balance; a reader needs
// none of it.
bool is_noise(const Difference& difference) {
    const auto by = difference.by();
    return by && std::abs(*by) < 1e-9 * std::abs(*difference.was->number);
}

ReportTable figures_table(const ChangedQuantity& quantity, const drawings::ShownUnits& units) {
    ReportTable table{"figures", {name_column(), name_column(was_head), name_column(now_head), number_column("by")}};
    for (const FigureKind kind : {FigureKind::way, FigureKind::money, FigureKind::mass, FigureKind::other})
        for (const Difference& figure : quantity.figures) {
            const FigureName name = figure_name(figure.path);
            if (name.kind == kind && !is_noise(figure)) table.add(figure_cells(figure, name, units));
        }
    return table;
}

void add_side(ReportTable& table, const char* when, const ChangedLine& line, const ChangedLine::Figures& figures,
              const drawings::ShownUnits& units) {
    const drawings::ShownUnit unit = units.of(figures.unit);
    const auto& other = !line.was || !line.now ? figures : &figures == &*line.was ? *line.now : *line.was;
    const bool is_last = !line.now || &figures == &*line.now;
    const double rate = figures.rate / unit.scale, other_rate = other.rate / unit.scale;
    const int quantity_digits = digits_for(unit(figures.quantity), unit(other.quantity));
    table.add({fmt::format("{}: {}", line.plugin, line.line), place_of(line), when,
               number_of(unit(figures.quantity), quantity_digits, unit.name),
               number_of(rate, digits_for(rate, other_rate)), Amount{figures.amount},
               is_last ? Cell(Amount{line.by(), 4, "", Sign::always}) : Cell()});
}

ReportTable lines_table(const ChangedQuantity& quantity, const drawings::ShownUnits& units) {
    ReportTable table{
        "cost lines",
        {unrepeated(name_column("cost lines")), unrepeated(name_column()), text_column(), number_column("quantity"),
         number_column("rate"), number_column("", units.currency), number_column("by")}};
    for (const ChangedLine& line : quantity.lines) {
        if (line.was) add_side(table, was_head, line, *line.was, units);
        if (line.now) add_side(table, now_head, line, *line.now, units);
    }
    return table;
}

// The two causes stand apart only where both changed the cost.
void add_causes(ReportSection& part, const Recheck& checked, std::size_t quantity) {
    const ChangedQuantity& changed = checked.today.quantities[quantity];
    if (checked.cause != answers::Cause::both || !changed.was || !changed.now) return;
    const auto& between = checked.reproduction.totals.at(quantity);
    if (!between) return;
    const auto text = [](Money by) { return render::whole_text(Amount{by, 4, "", Sign::always}); };
    part.blocks.emplace_back(
        Note{fmt::format("cost by the plugins or the program {}, by the plant's files {}",
                         text(between->cost - changed.was->cost), text(changed.now->cost - between->cost)),
             Note::Kind::sentence, 1});
}

// A quantity that could be made then or can be made today, but not both.
void add_made_once(ReportSection& part, const Recheck& checked, const ChangedQuantity& changed) {
    const int coin = checked.plant.currency_minor_units;
    const auto price = [&](const answers::Total& total) {
        return changed.piece.empty() ? render::coin_text(total.price_per_thousand, coin)
                                     : render::money_text(total.cost_per_thousand);
    };
    const auto add = [&](std::string text, std::size_t level) {
        part.blocks.emplace_back(Note{std::move(text), Note::Kind::sentence, level});
    };
    if (changed.now) return add(fmt::format("could not be made then; today at {} a thousand", price(*changed.now)), 1);
    add(fmt::format("{} a thousand then; today it cannot be made", price(*changed.was)), 1);
    for (const std::string& limit : changed.limits) add(limit, 2);
}

}  // namespace

std::string place_of(const ChangedLine& line) {
    const auto& figures = line.now ? line.now : line.was;
    if (line.ply) return fmt::format("ply {}", *line.ply + 1);
    return line.was && line.now && line.was->machine != line.now->machine
               ? fmt::format("{} -> {}", line.was->machine, line.now->machine)
               : figures->machine;
}

Report recheck_report(const Recheck& checked) {
    Report report{"recheck", checked.quote, heading(checked), {}};
    const auto add = [&](ReportSection section) {
        if (!section.blocks.empty()) report.sections.push_back(std::move(section));
    };
    const bool is_answered = checked.today.ends == TodaysAnswer::Ends::answered;
    add(verdict_section(checked));
    if (is_answered) add(ladder_section(checked));
    add(keys_section(checked));
    add(plugins_section(checked));
    add(trim_section(checked));
    add(plant_section(checked));
    for (std::size_t i = 0; is_answered && i < checked.today.quantities.size(); ++i)
        add(changed_quantity_part(checked, i));
    return report;
}

ReportSection changed_quantity_part(const Recheck& checked, std::size_t quantity) {
    const ChangedQuantity& changed = checked.today.quantities[quantity];
    ReportSection part;
    if (!changed.differs() && changed.figures.empty()) return part;
    const std::string piece = changed.piece.empty() ? "" : changed.piece + ", ";
    part = {
        piece + "quantity " + render::number_text(changed.quantity, 0), {}, ReportSection::Kind::part, checked.quote};
    if (changed.was.has_value() != changed.now.has_value()) {
        add_made_once(part, checked, changed);
        return part;
    }
    const drawings::ShownUnits units(checked.plant);
    add_causes(part, checked, quantity);
    part.blocks.emplace_back(figures_table(changed, units));
    part.blocks.emplace_back(lines_table(changed, units));
    return part;
}

}  // namespace flutebook::reports
