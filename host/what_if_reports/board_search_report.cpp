#include "host/what_if_reports/board_search_report.hpp"

#include <fmt/format.h>

#include "host/reports/building.hpp"
#include "host/reports/labels.hpp"
#include "host/reports/quote_report.hpp"
#include "host/reports/sheet_context.hpp"
#include "host/reports/strength_report.hpp"

namespace flutebook::what_if_reports {

using namespace reports;

namespace {

using what_if_answers::BoardOnTrial;

std::string asked_text(const plant::Plant& plant, const what_if_answers::AskedStrength& asked) {
    std::string result;
    if (asked.ect_kn_m) result = "ECT " + edge_crush_text(plant.units, *asked.ect_kn_m);
    if (asked.bct_kn)
        result += (result.empty() ? "" : " and ") + std::string("compression ") +
                  force_text(plant.units, *asked.bct_kn * 1000);
    return result;
}

ReportSection cheapest_section(const SheetContext& context, const what_if_answers::BoardSearch& search) {
    ReportSection section{"Cheapest board for " + asked_text(context.plant, search.asked)};
    for (std::size_t i = 0; i < search.cheapest.size(); ++i)
        section.blocks.emplace_back(Note{
            fmt::format("{}: {}", context.order_text(search.request.quantities[i]),
                        search.cheapest[i] ? search.boards[*search.cheapest[i]].board : std::string("no board serves")),
            Note::Kind::sentence, 1});
    return section;
}

// Boards that were costed, a line a quantity.
ReportSection costed_section(const SheetContext& context, const what_if_answers::BoardSearch& search) {
    const int coins = context.plant.currency_minor_units;
    ReportTable table{
        "boards",
        {unrepeated(name_column("board")), number_column("ECT"), number_column("compression"),
         number_column(context.pieces()), number_column("cost"), number_column(price_per_thousand_label)}};
    const plant::Units units = context.plant.units;
    for (const BoardOnTrial& board : search.boards)
        for (const BoardOnTrial::Priced& item : board.quantities) {
            const auto amount = [&](const std::optional<Money>& money) {
                return money ? Cell(Amount{Money::rounded(money->to_double(), coins).value_or(*money), coins})
                             : Cell("-");
            };
            table.add({board.board, edge_crush_text(units, board.ect_kn_m.value_or(0)),
                       board.compression_n ? Cell(force_text(units, *board.compression_n)) : Cell("-"),
                       Number{item.quantity, 0}, amount(item.cost), amount(item.price_per_thousand)});
        }
    return {fmt::format("Boards that bear it, {}", context.units.currency), {table}};
}

ReportSection other_boards_section(const what_if_answers::BoardSearch& search) {
    ReportSection section;
    for (const BoardOnTrial& board : search.boards) {
        if (board.why_not.empty()) continue;
        section.title = "Other boards";
        section.blocks.emplace_back(Note{fmt::format("{}: {}", board.board, board.why_not), Note::Kind::sentence, 1});
    }
    return section;
}

}  // namespace

render::Report board_search_report(const plant::Plant& plant, const what_if_answers::BoardSearch& search) {
    const SheetContext context(plant, search.request);
    Report report{"board-search", search.request.number, request_heading(plant, search.request), {}};
    report.sections.push_back(cheapest_section(context, search));
    if (ReportSection costed = costed_section(context, search);
        !std::get<ReportTable>(costed.blocks.front()).rows.empty())
        report.sections.push_back(std::move(costed));
    if (ReportSection others = other_boards_section(search); !others.title.empty())
        report.sections.push_back(std::move(others));
    return report;
}

}  // namespace flutebook::what_if_reports
