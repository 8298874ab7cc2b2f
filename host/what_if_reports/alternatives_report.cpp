#include "host/what_if_reports/alternatives_report.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "host/reports/building.hpp"
#include "host/reports/labels.hpp"
#include "host/reports/quote_ladder.hpp"
#include "host/reports/quote_report.hpp"
#include "host/what_if_reports/changed_numbers.hpp"

namespace flutebook::what_if_reports {

using namespace reports;

namespace {

using what_if_answers::Alternative;
using what_if_answers::Alternatives;

constexpr std::size_t most_limits = 3;
constexpr const char* no_answer = "no answer";

// Which columns tell the alternatives apart.
struct ToldApart {
    bool by_board, by_margin;
};

ToldApart told_apart(const Alternatives& answer) {
    const auto any = [&](const auto& is) { return std::any_of(answer.items.begin(), answer.items.end(), is); };
    return {any([](const Alternative& item) { return item.board.has_value(); }),
            any([](const Alternative& item) { return item.margin || item.price; })};
}

// Why there is no price, in a sentence.
std::string reason_of(const Alternative& item, std::size_t index) {
    if (!item.answer) return fmt::format("{}", fmt::join(item.complaints, "; "));
    std::vector<std::string> limits;
    for (const geometry::Refused& way : item.answer->quantities[index].unmakeable->refused)
        if (std::find(limits.begin(), limits.end(), way.limit) == limits.end()) limits.push_back(way.limit);
    const std::size_t named = std::min(limits.size(), most_limits);
    const std::string more = named < limits.size() ? fmt::format("; and {} more", limits.size() - named) : "";
    limits.resize(named);
    return fmt::format("{}{}", fmt::join(limits, "; "), more);
}

// What stops every quantity of an alternative, or its neighbour, alike is told once.
bool has_reason(const Alternatives& answer, std::size_t at, std::size_t index) {
    const Alternative& item = answer.items[at];
    if (!item.answer) return index == 0 && (at == 0 || answer.items[at - 1].complaints != item.complaints);
    const auto& quantities = item.answer->quantities;
    if (quantities[index].is_makeable() || (index > 0 && !quantities[index - 1].is_makeable())) return false;
    return at == 0 || answer.items[at - 1].board != item.board;
}

// The ladder's columns that a line of 80 has room for: an order's value is its price again, and what is wasted is not
// what margins differ in.
std::vector<std::size_t> shown_columns(const ToldApart& by) {
    return by.by_margin ? std::vector<std::size_t>{0, 2, 3, 4, 6} : std::vector<std::size_t>{0, 2, 3, 4, 5, 6};
}

std::vector<Cell> row_cells(const SheetContext& context, const Alternative& item, std::size_t index,
                            const ToldApart& by) {
    const auto row = item.answer ? ladder_row(context, *item.answer, index) : std::nullopt;
    std::vector<Cell> cells;
    if (by.by_board) cells.emplace_back(item.board.value_or(context.plant.boards[context.request.board].code));
    if (by.by_margin) cells.emplace_back(row ? Cell(Percentage{item.margins[index], 2}) : Cell("-"));
    if (!row) {
        cells.insert(cells.end(), shown_columns(by).size() - 1, Cell("-"));
        cells.emplace_back(item.answer ? cannot_be_made_label : no_answer);
        return cells;
    }
    const std::vector<Cell> all = ladder_cells(*row, context.plant.currency_minor_units);
    for (const std::size_t column : shown_columns(by)) cells.push_back(all[column]);
    return cells;
}

ReportSection table_section(const SheetContext& context, const Alternatives& answer) {
    const ToldApart by = told_apart(answer);
    ReportTable table{"alternatives", {unrepeated(number_column(context.pieces()))}};
    if (by.by_board) table.columns.push_back(text_column("board"));
    if (by.by_margin) table.columns.push_back(number_column("margin"));
    const std::vector<TableColumn> all = ladder_columns();
    for (const std::size_t column : shown_columns(by)) table.columns.push_back(all[column]);
    for (std::size_t i = 0; i < answer.request.quantities.size(); ++i)
        for (std::size_t at = 0; at < answer.items.size(); ++at) {
            const Alternative& item = answer.items[at];
            std::vector<Cell> cells = {Number{answer.request.quantities[i], 0}};
            for (Cell& cell : row_cells(context, item, i, by)) cells.push_back(std::move(cell));
            table.add(std::move(cells));
            if (has_reason(answer, at, i)) table.rows.back().notes = {{reason_of(item, i), Note::Kind::sentence, 1}};
        }
    return {fmt::format("Beside one another, {}", context.units.currency), {table}};
}

std::vector<base::Warning> warnings_of(const Alternatives& answer) {
    std::vector<base::Warning> result;
    for (const Alternative& item : answer.items) {
        if (!item.answer) continue;
        for (const base::Warning& warning : item.answer->warnings)
            if (std::none_of(result.begin(), result.end(), [&](const base::Warning& known) {
                    return known.at == warning.at && known.text == warning.text;
                }))
                result.push_back(warning);
    }
    return result;
}

}  // namespace

Report alternatives_report(const plant::Plant& plant, const Alternatives& answer) {
    using Counted = SheetContext::Counted;
    const bool is_set = std::any_of(answer.items.begin(), answer.items.end(), [](const Alternative& item) {
        return item.answer && !item.answer->pieces.empty();
    });
    const SheetContext context(plant, answer.request, is_set ? Counted::sets : Counted::boxes);
    Report report{"alternatives", answer.request.number, request_heading(plant, answer.request), {}};
    if (!answer.changed.empty()) report.sections.push_back(changed_numbers_section(answer.changed));
    report.sections.push_back(table_section(context, answer));
    if (const auto warnings = warnings_of(answer); !warnings.empty())
        report.sections.push_back(warnings_section(warnings));
    return report;
}

}  // namespace flutebook::what_if_reports
