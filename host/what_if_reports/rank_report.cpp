#include "host/what_if_reports/rank_report.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "host/render/number_text.hpp"
#include "host/reports/building.hpp"
#include "host/reports/labels.hpp"
#include "host/reports/quote_ladder.hpp"
#include "host/reports/quote_report.hpp"
#include "host/reports/sheet_context.hpp"
#include "host/what_if_reports/changed_numbers.hpp"

namespace flutebook::what_if_reports {

using namespace reports;

namespace {

using what_if_answers::QuantityRank;
using what_if_answers::RankedNumber;

constexpr std::size_t first_shown = 15;

// What a tenth of a number does; less of it is marked.
std::vector<Cell> rank_cells(const RankedNumber& number, Money price, int coin) {
    const std::string mark = number.tenth == RankedNumber::Tenth::less ? " (less)" : "";
    const double share = price > Money() ? number.change.to_double() / price.to_double() : 0;
    return {number.path,
            number.was,
            number.now + mark,
            Amount{number.price, coin},
            Amount{number.change, coin, "", Sign::always},
            Percentage{share, 2, "", Sign::always}};
}

void add_note(ReportSection& section, std::string text) {
    section.blocks.emplace_back(Note{std::move(text), Note::Kind::sentence, 1});
}

ReportSection rank_section(const SheetContext& context, const QuantityRank& quantity, RankLength length) {
    const std::string title = context.order_text(quantity.quantity);
    if (!quantity.price) return {fmt::format("{}: {}", title, cannot_be_made_label), {}};
    const int coin = context.plant.currency_minor_units;
    ReportTable table{
        "rank",
        {name_column("a tenth more of"), text_column(before_label), text_column(after_label), number_column("price"),
         strong(number_column(difference_label)), number_column("", "of the price")}};
    const std::size_t shown =
        length == RankLength::all ? quantity.moved.size() : std::min(quantity.moved.size(), first_shown);
    for (std::size_t i = 0; i < shown; ++i) table.add(rank_cells(quantity.moved[i], *quantity.price, coin));
    ReportSection section{fmt::format("{} at {} {} a thousand: what moves the price", title,
                                      render::coin_text(*quantity.price, coin), context.units.currency),
                          {table}};
    if (shown < quantity.moved.size())
        add_note(section, fmt::format("and {} more numbers, each by less; --rank {:.0f} lists them all",
                                      quantity.moved.size() - shown, quantity.quantity));
    if (!quantity.unmoved.empty())
        add_note(section, fmt::format("{} numbers that stand behind the cost leave the price as it is",
                                      quantity.unmoved.size()));
    for (const what_if_answers::StuckNumber& number : quantity.stuck)
        add_note(section, fmt::format("{} cannot be moved by a tenth: {}", number.path, number.why));
    return section;
}

}  // namespace

Report rank_report(const plant::Plant& plant, const what_if_answers::Rank& answer, RankLength length) {
    using Counted = SheetContext::Counted;
    const SheetContext context(plant, answer.request, answer.pieces > 0 ? Counted::sets : Counted::boxes);
    Report report{"rank", answer.request.number, request_heading(plant, answer.request), {}};
    if (!answer.changed.empty()) report.sections.push_back(changed_numbers_section(answer.changed));
    for (const QuantityRank& quantity : answer.quantities)
        report.sections.push_back(rank_section(context, quantity, length));
    if (!answer.warnings.empty()) report.sections.push_back(warnings_section(answer.warnings));
    return report;
}

}  // namespace flutebook::what_if_reports
