#include "host/what_if_reports/what_if_report.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "host/render/number_text.hpp"
#include "host/reports/building.hpp"
#include "host/reports/labels.hpp"
#include "host/reports/quote_ladder.hpp"
#include "host/reports/quote_report.hpp"
#include "host/reports/recheck_report.hpp"
#include "host/what_if_reports/changed_numbers.hpp"

namespace flutebook::what_if_reports {

using namespace reports;

namespace {

using what_if_answers::QuantityBeside;

Amount change_of(Money was, Money now, int decimals) {
    const Money by = now - was;
    return {by, decimals, "", by == Money() ? Sign::negative_only : Sign::always};
}

std::string ways_text(const QuantityBeside& quantity) {
    if (quantity.made_on == quantity.now_made_on || quantity.now_made_on.empty()) return quantity.made_on;
    if (quantity.made_on.empty()) return quantity.now_made_on;
    return fmt::format("{}, then {}", quantity.made_on, quantity.now_made_on);
}

ReportSection prices_section(const SheetContext& context, const what_if_answers::WhatIf& answer) {
    const int coin = context.plant.currency_minor_units;
    ReportTable table{
        "prices",
        {number_column(context.pieces()), number_column(before_label), strong(number_column(after_label)),
         number_column(difference_label), number_column("", "of the price"), sentence_column(made_on_label)}};
    for (const QuantityBeside& quantity : answer.quantities) {
        if (!quantity.piece.empty()) continue;
        const auto price = [&](const std::optional<answers::Total>& side) {
            return side ? Cell(Amount{side->price_per_thousand, coin}) : Cell("-");
        };
        std::vector<Cell> cells = {Number{quantity.quantity, 0}, price(quantity.was), price(quantity.now)};
        if (quantity.was && quantity.now) {
            const Amount by = change_of(quantity.was->price_per_thousand, quantity.now->price_per_thousand, coin);
            const double was = quantity.was->price_per_thousand.to_double();
            cells.emplace_back(by);
            cells.emplace_back(Percentage{was > 0 ? by.money.to_double() / was : 0, 2, "", by.sign});
        } else {
            cells.insert(cells.end(), {Cell("-"), Cell("-")});
        }
        cells.emplace_back(quantity.limits.empty() ? ways_text(quantity) : std::string(cannot_be_made_label));
        table.add(std::move(cells));
    }
    return {fmt::format("{}, {}", "Price per thousand", context.units.currency), {table}};
}

std::string title_of(const SheetContext& context, const QuantityBeside& quantity) {
    return (quantity.piece.empty() ? "" : quantity.piece + ": ") + context.order_text(quantity.quantity);
}

std::string where(const SheetContext& context, const answers::ChangedLine& line) {
    const auto& plies = context.plant.boards[context.request.board].plies;
    std::string result = place_of(line);
    if (line.ply) result += " " + context.plant.paper(plies[*line.ply].paper).code;
    return result;
}

// Lines that cost the same on both sides.
struct LinesAlike {
    std::size_t count = 0;
    Money sum;

    void add(Money amount) {
        ++count;
        sum += amount;
    }
};

ReportSection lines_section(const SheetContext& context, const QuantityBeside& quantity) {
    ReportTable table{"lines",
                      {unrepeated(name_column("line")), name_column("where"), number_column(before_label),
                       number_column(after_label), number_column(difference_label)}};
    LinesAlike alike;
    for (const answers::ChangedLine& line : quantity.lines) {
        const Money before = line.was ? line.was->amount : Money(), after = line.now ? line.now->amount : Money();
        if (before == after)
            alike.add(before);
        else
            table.add({line.title, where(context, line), Amount{before}, Amount{after}, change_of(before, after, 4)});
    }
    if (alike.count > 0)
        table.add({fmt::format("{} lines that stay", alike.count), {}, Amount{alike.sum}, Amount{alike.sum}, Amount{}});
    const answers::Total &was = *quantity.was, &now = *quantity.now;
    table.add(RowKind::total,
              {net_cost_label, {}, Amount{was.cost}, Amount{now.cost}, change_of(was.cost, now.cost, 4)});
    const auto add_unit = [&](const char* label, Money before, Money after) {
        table.add({label, {}, Amount{before}, Amount{after}, change_of(before, after, 4)});
    };
    add_unit(cost_per_thousand_label, was.cost_per_thousand, now.cost_per_thousand);
    if (quantity.piece.empty()) add_unit(price_per_thousand_label, was.price_per_thousand, now.price_per_thousand);
    return {fmt::format("{}, {}", title_of(context, quantity), context.units.currency), {table}};
}

ReportSection limits_section(const SheetContext& context, const QuantityBeside& quantity) {
    ReportSection section{
        fmt::format("{}: no corrugator, roll and route can make this order{}; limits:", title_of(context, quantity),
                    quantity.was   ? " with these numbers"
                    : quantity.now ? " without them"
                                   : "")};
    for (const std::string& limit : quantity.limits) section.blocks.emplace_back(Note{limit, Note::Kind::sentence, 1});
    return section;
}

}  // namespace

Report what_if_report(const plant::Plant& plant, const what_if_answers::WhatIf& answer) {
    using Counted = SheetContext::Counted;
    const bool is_set = std::any_of(answer.quantities.begin(), answer.quantities.end(),
                                    [](const QuantityBeside& quantity) { return !quantity.piece.empty(); });
    const SheetContext context(plant, answer.request, is_set ? Counted::sets : Counted::boxes);
    const SheetContext of_piece(plant, answer.request, Counted::pieces);
    Report report{"what-if", answer.request.number, request_heading(plant, answer.request), {}};
    if (!answer.changed.empty()) report.sections.push_back(changed_numbers_section(answer.changed));
    report.sections.push_back(prices_section(context, answer));
    for (const QuantityBeside& quantity : answer.quantities) {
        const SheetContext& counted = quantity.piece.empty() ? context : of_piece;
        if (quantity.was && quantity.now)
            report.sections.push_back(lines_section(counted, quantity));
        else if (!quantity.limits.empty())
            report.sections.push_back(limits_section(counted, quantity));
    }
    if (!answer.warnings.empty()) report.sections.push_back(warnings_section(answer.warnings));
    return report;
}

}  // namespace flutebook::what_if_reports
