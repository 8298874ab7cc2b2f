#include "host/reports/recheck_sections.hpp"

#include <fmt/format.h>

#include <array>
#include <cmath>

#include "host/answers/changed_plugin.hpp"
#include "host/answers/place_text.hpp"
#include "host/render/number_text.hpp"
#include "host/render/table.hpp"
#include "host/render/text.hpp"
#include "host/reports/recheck_words.hpp"
#include "host/reports/shown_units.hpp"

namespace flutebook::reports {

namespace {

using services::ChangedLine;
using services::ChangedQuantity;
using services::Difference;
using services::Leaf;
using services::Recheck;

constexpr int most_decimals = 7;

// Both sides of a difference in as many digits as tell them apart.
std::array<std::string, 2> pair_text(double was, double now) {
    for (int more = render::shown_digits; more < 17; more += 2) {
        std::array<std::string, 2> made = {
            render::significant_number(was, more, most_decimals + more - render::shown_digits),
            render::significant_number(now, more, most_decimals + more - render::shown_digits)};
        if (was == now || made[0] != made[1]) return made;
    }
    return {fmt::format("{}", was), fmt::format("{}", now)};
}

struct Cells {
    std::string was, now, by;
};

std::string money_of(double amount) {
    return render::money_text(Money::rounded(amount, 4).value_or(Money()));
}

Cells money_cells(const Difference& own) {
    return {money_of(*own.was->number), money_of(*own.now->number), signed_text(money_of(*own.by()))};
}

Cells number_cells(const Difference& own, const ShownUnit& unit) {
    const auto shown = pair_text(unit(*own.was->number), unit(*own.now->number));
    const std::string name = unit.name.empty() ? "" : " " + unit.name;
    return {shown[0] + name, shown[1] + name,
            signed_text(render::significant_number(unit(*own.by()), render::shown_digits, most_decimals)) + name};
}

std::string word_of(const std::optional<Leaf>& leaf) {
    return leaf ? leaf->text : "-";
}

Cells cells_of(const Difference& own, const FigureName& name, const ShownUnits& units) {
    if (!own.by() || name.unit.empty()) return {word_of(own.was), word_of(own.now), ""};
    return name.unit == "money" ? money_cells(own) : number_cells(own, units.of(name.unit));
}

// Sums over another layout end in other digits: far below what the host itself calls balanced, and nothing to read.
bool is_noise(const Difference& own) {
    const auto by = own.by();
    return by && std::abs(*by) < 1e-9 * std::abs(*own.was->number);
}

void add_figures(render::Table& table, const ChangedQuantity& quantity, FigureKind kind, const ShownUnits& units) {
    for (const Difference& own : quantity.figures) {
        const FigureName name = figure_name(own.path);
        if (name.kind != kind || is_noise(own)) continue;
        const Cells cells = cells_of(own, name, units);
        table.add({name.title, cells.was, cells.now, cells.by});
    }
}

std::string figures_text(const ChangedQuantity& quantity, const ShownUnits& units) {
    if (quantity.figures.empty()) return "";
    render::Table table(
        {render::Align::flexible, render::Align::flexible, render::Align::flexible, render::Align::right}, 2);
    table.add({"", "was", "now", "by"});
    for (const FigureKind kind : {FigureKind::way, FigureKind::money, FigureKind::mass, FigureKind::other})
        add_figures(table, quantity, kind, units);
    return table.text();
}

std::string place_of(const ChangedLine& line) {
    const auto& own = line.now ? line.now : line.was;
    const std::string machine = line.was && line.now && line.was->machine != line.now->machine
                                    ? fmt::format("{} -> {}", line.was->machine, line.now->machine)
                                    : own->machine;
    return line.ply ? fmt::format("ply {}", *line.ply + 1) : machine;
}

void add_side(render::Table& table, const char* when, const ChangedLine& line, const ChangedLine::Figures& own,
              const ShownUnits& units) {
    const ShownUnit unit = units.of(own.unit);
    const auto& other = line.was && line.now ? (&own == &*line.was ? *line.now : *line.was) : own;
    const bool is_last = !line.now || &own == &*line.now;
    const bool is_first = !line.was || &own == &*line.was;
    table.add({is_first ? fmt::format("{}: {}", line.plugin, line.line) : "", is_first ? place_of(line) : "", when,
               pair_text(unit(own.quantity), unit(other.quantity))[0], unit.name,
               pair_text(own.rate / unit.scale, other.rate / unit.scale)[0], render::money_text(own.amount),
               is_last ? signed_text(render::money_text(line.by())) : ""});
}

std::string lines_text(const ChangedQuantity& quantity, const ShownUnits& units) {
    if (quantity.lines.empty()) return "";
    render::Table table({render::Align::flexible, render::Align::flexible, render::Align::left, render::Align::decimal,
                         render::Align::left, render::Align::decimal, render::Align::right, render::Align::right},
                        2);
    table.add({"cost lines", "", "", "quantity", "", "rate", units.currency, "by"});
    for (const ChangedLine& line : quantity.lines) {
        if (line.was) add_side(table, "was", line, *line.was, units);
        if (line.now) add_side(table, "now", line, *line.now, units);
    }
    return table.text();
}

// Told apart only where both had a hand in it.
std::string causes_text(const Recheck& checked, std::size_t quantity) {
    const ChangedQuantity& own = checked.today.quantities[quantity];
    if (checked.cause != services::Cause::both || !own.was || !own.now) return "";
    const auto& between = checked.reproduction.totals.at(quantity);
    if (!between) return "";
    return fmt::format("  cost by the plugins or the program {}, by the plant's files {}\n",
                       signed_text(render::money_text(between->cost - own.was->cost)),
                       signed_text(render::money_text(own.now->cost - between->cost)));
}

std::string made_otherwise(const Recheck& checked, const ChangedQuantity& own) {
    const int coin = checked.plant.currency_minor_units;
    if (own.now)
        return fmt::format("  could not be made then; today at {} a thousand\n",
                           render::coin_text(own.now->price_per_thousand, coin));
    std::string made = fmt::format("  {} a thousand then; today nothing can make it\n",
                                   render::coin_text(own.was->price_per_thousand, coin));
    for (const std::string& limit : own.limits) made += render::hanging("    ", render::cleaned(limit));
    return made;
}

std::string key_text(const services::ChangedKey& own) {
    const auto& [path, was, now] = own.difference;
    if (!now) return fmt::format("{}: {}: taken out, was {}", own.file, path, was->text);
    const std::string place = fmt::format("{}:{}:{}: {}", own.file, now->place.line, now->place.column, path);
    if (!was) return fmt::format("{}: added, {}", place, now->text);
    return fmt::format("{}: {} -> {}", place, was->text, now->text);
}

}  // namespace

std::string signed_text(const std::string& number) {
    return number.empty() || number.front() == '-' ? number : "+" + number;
}

std::string changed_keys_section(const Recheck& checked) {
    if (checked.keys.empty()) return "\nThe plant's files say the same as then.\n";
    std::string made = "\nChanged in the plant's files\n";
    for (const services::ChangedKey& own : checked.keys) made += render::hanging("  ", render::cleaned(key_text(own)));
    return made;
}

std::string changed_plugins_section(const Recheck& checked) {
    if (checked.plugins.empty()) return "The plugins are the same files.\n";
    std::string made = "\nChanged plugins\n";
    for (const services::ChangedPlugin& own : checked.plugins)
        made += render::hanging("  ", render::cleaned(answers::changed_plugin_text(own)));
    return made;
}

std::string changed_heading_section(const Recheck& checked) {
    if (checked.today.heading.empty()) return "";
    std::string made = "\n";
    for (const Difference& own : checked.today.heading)
        made += render::hanging("", render::cleaned(fmt::format("The {} was {} and is {}.", figure_name(own.path).title,
                                                                word_of(own.was), word_of(own.now))));
    return made;
}

std::string changed_quantity_section(const Recheck& checked, std::size_t quantity) {
    const ChangedQuantity& own = checked.today.quantities[quantity];
    if (!own.differs() || checked.today.ends != services::TodaysAnswer::Ends::answered) return "";
    std::string made = fmt::format("\n{0}{1}{0}", render::rule('-'),
                                   render::edges("quantity " + render::number_text(own.quantity, 0), checked.quote));
    if (own.was.has_value() != own.now.has_value()) return made + made_otherwise(checked, own);
    const ShownUnits units(checked.plant);
    made += causes_text(checked, quantity);
    made += figures_text(own, units);
    const std::string lines = lines_text(own, units);
    if (!lines.empty() && !own.figures.empty()) made += '\n';
    return made + lines;
}

}  // namespace flutebook::reports
