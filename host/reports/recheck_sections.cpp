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
        std::array<std::string, 2> result = {
            render::significant_number(was, more, most_decimals + more - render::shown_digits),
            render::significant_number(now, more, most_decimals + more - render::shown_digits)};
        if (was == now || result[0] != result[1]) return result;
    }
    return {fmt::format("{}", was), fmt::format("{}", now)};
}

struct Cells {
    std::string was, now, by;
};

std::string money_of(double amount) {
    return render::money_text(Money::rounded(amount, 4).value_or(Money()));
}

Cells money_cells(const Difference& difference) {
    return {money_of(*difference.was->number), money_of(*difference.now->number),
            signed_text(money_of(*difference.by()))};
}

Cells number_cells(const Difference& difference, const ShownUnit& unit) {
    const auto shown = pair_text(unit(*difference.was->number), unit(*difference.now->number));
    const std::string name = unit.name.empty() ? "" : " " + unit.name;
    return {
        shown[0] + name, shown[1] + name,
        signed_text(render::significant_number(unit(*difference.by()), render::shown_digits, most_decimals)) + name};
}

std::string word_of(const std::optional<Leaf>& leaf) {
    return leaf ? leaf->text : "-";
}

Cells cells_of(const Difference& difference, const FigureName& name, const ShownUnits& units) {
    if (!difference.by() || name.unit.empty()) return {word_of(difference.was), word_of(difference.now), ""};
    return name.unit == "money" ? money_cells(difference) : number_cells(difference, units.of(name.unit));
}

// Sums over another layout end in other digits: far below what the host itself calls balanced, and nothing to read.
bool is_noise(const Difference& difference) {
    const auto by = difference.by();
    return by && std::abs(*by) < 1e-9 * std::abs(*difference.was->number);
}

void add_figures(render::Table& table, const ChangedQuantity& quantity, FigureKind kind, const ShownUnits& units) {
    for (const Difference& figure : quantity.figures) {
        const FigureName name = figure_name(figure.path);
        if (name.kind != kind || is_noise(figure)) continue;
        const Cells cells = cells_of(figure, name, units);
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
    const auto& item = line.now ? line.now : line.was;
    const std::string machine = line.was && line.now && line.was->machine != line.now->machine
                                    ? fmt::format("{} -> {}", line.was->machine, line.now->machine)
                                    : item->machine;
    return line.ply ? fmt::format("ply {}", *line.ply + 1) : machine;
}

void add_side(render::Table& table, const char* when, const ChangedLine& line, const ChangedLine::Figures& figures,
              const ShownUnits& units) {
    const ShownUnit unit = units.of(figures.unit);
    const auto& other = line.was && line.now ? (&figures == &*line.was ? *line.now : *line.was) : figures;
    const bool is_last = !line.now || &figures == &*line.now;
    const bool is_first = !line.was || &figures == &*line.was;
    table.add({is_first ? fmt::format("{}: {}", line.plugin, line.line) : "", is_first ? place_of(line) : "", when,
               pair_text(unit(figures.quantity), unit(other.quantity))[0], unit.name,
               pair_text(figures.rate / unit.scale, other.rate / unit.scale)[0], render::money_text(figures.amount),
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
    const ChangedQuantity& changed_quantity = checked.today.quantities[quantity];
    if (checked.cause != services::Cause::both || !changed_quantity.was || !changed_quantity.now) return "";
    const auto& between = checked.reproduction.totals.at(quantity);
    if (!between) return "";
    return fmt::format("  cost by the plugins or the program {}, by the plant's files {}\n",
                       signed_text(render::money_text(between->cost - changed_quantity.was->cost)),
                       signed_text(render::money_text(changed_quantity.now->cost - between->cost)));
}

std::string made_otherwise(const Recheck& checked, const ChangedQuantity& changed_quantity) {
    const int coin = checked.plant.currency_minor_units;
    if (changed_quantity.now)
        return fmt::format("  could not be made then; today at {} a thousand\n",
                           render::coin_text(changed_quantity.now->price_per_thousand, coin));
    std::string result = fmt::format("  {} a thousand then; today nothing can make it\n",
                                     render::coin_text(changed_quantity.was->price_per_thousand, coin));
    for (const std::string& limit : changed_quantity.limits) result += render::hanging("    ", render::cleaned(limit));
    return result;
}

std::string key_text(const services::ChangedKey& changed_key) {
    const auto& [path, was, now] = changed_key.difference;
    if (!now) return fmt::format("{}: {}: taken out, was {}", changed_key.file, path, was->text);
    const std::string place = fmt::format("{}:{}:{}: {}", changed_key.file, now->place.line, now->place.column, path);
    if (!was) return fmt::format("{}: added, {}", place, now->text);
    return fmt::format("{}: {} -> {}", place, was->text, now->text);
}

}  // namespace

std::string signed_text(const std::string& number) {
    return number.empty() || number.front() == '-' ? number : "+" + number;
}

std::string changed_keys_section(const Recheck& checked) {
    if (checked.keys.empty()) return "\nThe plant's files say the same as then.\n";
    std::string result = "\nChanged in the plant's files\n";
    for (const services::ChangedKey& key : checked.keys)
        result += render::hanging("  ", render::cleaned(key_text(key)));
    return result;
}

std::string changed_plugins_section(const Recheck& checked) {
    if (checked.plugins.empty()) return "The plugins are the same files.\n";
    std::string result = "\nChanged plugins\n";
    for (const services::ChangedPlugin& plugin : checked.plugins)
        result += render::hanging("  ", render::cleaned(answers::changed_plugin_text(plugin)));
    return result;
}

std::string changed_heading_section(const Recheck& checked) {
    if (checked.today.heading.empty()) return "";
    std::string result = "\n";
    for (const Difference& difference : checked.today.heading)
        result += render::hanging(
            "", render::cleaned(fmt::format("The {} was {} and is {}.", figure_name(difference.path).title,
                                            word_of(difference.was), word_of(difference.now))));
    return result;
}

std::string changed_quantity_section(const Recheck& checked, std::size_t quantity) {
    const ChangedQuantity& changed_quantity = checked.today.quantities[quantity];
    if (!changed_quantity.differs() || checked.today.ends != services::TodaysAnswer::Ends::answered) return "";
    std::string result =
        fmt::format("\n{0}{1}{0}", render::rule('-'),
                    render::edges("quantity " + render::number_text(changed_quantity.quantity, 0), checked.quote));
    if (changed_quantity.was.has_value() != changed_quantity.now.has_value())
        return result + made_otherwise(checked, changed_quantity);
    const ShownUnits units(checked.plant);
    result += causes_text(checked, quantity);
    result += figures_text(changed_quantity, units);
    const std::string lines = lines_text(changed_quantity, units);
    if (!lines.empty() && !changed_quantity.figures.empty()) result += '\n';
    return result + lines;
}

}  // namespace flutebook::reports
