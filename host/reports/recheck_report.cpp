// The verdict comes first; the figures behind it stand in recheck_differences.
#include "host/reports/recheck_report.hpp"

#include <fmt/format.h>

#include "host/answers/changed_plugin.hpp"
#include "host/base/place.hpp"
#include "host/reports/building.hpp"
#include "host/reports/figure_names.hpp"
#include "host/reports/labels.hpp"
#include "host/reports/recheck_differences.hpp"

namespace flutebook::reports {

namespace {

using answers::Cause;
using answers::Recheck;
using answers::Reproduction;
using answers::TodaysAnswer;

ReportHeading heading(const Recheck& checked) {
    ReportHeading result{fmt::format("{} rechecked: {}", checked.quote, checked.request),
                         checked.plant.name,
                         {{"saved", {fmt::format("{} by {}", base::utc_day(checked.when), checked.who)}}}};
    if (checked.date) result.facts.push_back({prices_of_label, {base::to_string(*checked.date)}});
    result.facts.push_back({money_in_label, {checked.plant.currency}});
    return result;
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
            return checked.cause == Cause::nothing_differs || checked.cause == Cause::plant_files
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
    ReportSection section{"", {Note{cause_text(checked.cause)}, Note{reproduction_text(checked)}}};
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

// The plant's name and currency.
ReportSection plant_section(const Recheck& checked) {
    ReportSection section;
    const auto word = [](const std::optional<answers::Leaf>& leaf) { return leaf ? leaf->text : "-"; };
    for (const answers::Difference& difference : checked.today.heading)
        section.blocks.emplace_back(Note{fmt::format("The {} was {} and is {}.", figure_name(difference.path).title,
                                                     word(difference.was), word(difference.now))});
    return section;
}

}  // namespace

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
    add(plant_section(checked));
    for (std::size_t i = 0; is_answered && i < checked.today.quantities.size(); ++i)
        add(changed_quantity_part(checked, i));
    return report;
}

}  // namespace flutebook::reports
