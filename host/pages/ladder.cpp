// The ladder and the measures are tables of the report, turned: their columns become rows.
#include "host/pages/ladder.hpp"

#include "host/render/report.hpp"
#include "host/reports/quote_ladder.hpp"

namespace flutebook::pages {

namespace {

using answers::RequestAnswer;
using render::ReportTable;

Html with_unit(const render::Cell& cell) {
    const render::CellText words = render::cell_text(cell);
    if (words.unit.empty()) return pages::words(words.text);
    return html("{} <span class=\"unit\">{}</span>", words.text, words.unit);
}

// The row of a table for a quantity; null where it has none.
const render::TableRow* row_of(const ReportTable& table, double quantity) {
    for (const render::TableRow& row : table.rows)
        if (render::raw_number(row.cells.at(0)) == quantity) return &row;
    return nullptr;
}

class LadderWriter {
public:
    LadderWriter(const RequestAnswer& answer, const AnswerView& view, const std::string& prefix)
        : answer_(answer), view_(view), prefix_(prefix), shown_(shown_quantity(answer, view)) {}

    [[nodiscard]] Html heads(const std::string& counted) const {
        Html result = html("<th scope=\"col\">{}</th>", counted);
        for (std::size_t i = 0; i < answer_.quantities.size(); ++i) {
            const double quantity = answer_.quantities[i].quantity();
            const Html number = with_unit(render::Number{quantity, 0});
            const Attribute current = i == shown_ ? Attribute(" aria-current=\"true\"") : Attribute();
            result += html("<th scope=\"col\" class=\"{}\"><a id=\"{}quantity-{}\" href=\"{}\"{}>{}</a></th>",
                           number_class(i), prefix_, i + 1, view_.at_quantity(quantity), current, number);
        }
        return html("<thead><tr>{}</tr></thead>\n", result);
    }

    [[nodiscard]] Html rows(const ReportTable& table) const {
        Html result;
        for (std::size_t c = 1; c < table.columns.size(); ++c) result += row(table, c);
        return result;
    }

private:
    [[nodiscard]] const char* number_class(std::size_t i) const { return i == shown_ ? "num shown" : "num"; }

    [[nodiscard]] Html row(const ReportTable& table, std::size_t c) const {
        const render::TableColumn& column = table.columns[c];
        Html cells = html("<th scope=\"row\">{} <span class=\"unit\">{}</span></th>", column.title, column.unit);
        for (std::size_t i = 0; i < answer_.quantities.size(); ++i) {
            const render::TableRow* found = row_of(table, answer_.quantities[i].quantity());
            const bool has_cell = found != nullptr && c < found->cells.size();
            cells +=
                html("<td class=\"{}\">{}</td>", number_class(i), has_cell ? with_unit(found->cells[c]) : words("-"));
        }
        const bool is_strong = column.weight == render::TableColumn::Weight::strong;
        return html("<tr class=\"{}\">{}</tr>\n", is_strong ? "strong" : is_number(column) ? "" : "said", cells);
    }

    static bool is_number(const render::TableColumn& column) {
        return column.kind == render::TableColumn::Kind::number;
    }

    const RequestAnswer& answer_;
    const AnswerView& view_;
    const std::string& prefix_;
    std::optional<std::size_t> shown_;
};

}  // namespace

std::optional<std::size_t> shown_quantity(const RequestAnswer& answer, const AnswerView& view) {
    std::optional<std::size_t> first;
    for (std::size_t i = 0; i < answer.quantities.size(); ++i) {
        if (!answer.quantities[i].is_makeable()) continue;
        if (view.quantity == answer.quantities[i].quantity()) return i;
        if (!first) first = i;
    }
    return first;
}

Html ladder_html(const reports::SheetContext& context, const RequestAnswer& answer, const AnswerView& view,
                 const std::string& prefix) {
    const render::ReportSection ladder = reports::ladder_section(context, answer);
    const render::ReportSection measure = reports::measure_section(context, answer);
    const LadderWriter writer(answer, view, prefix);
    Html rows = writer.rows(std::get<ReportTable>(ladder.blocks.at(0)));
    if (!measure.title.empty()) rows += writer.rows(std::get<ReportTable>(measure.blocks.at(0)));
    Html result = html(
        "<div class=\"scroll\" role=\"group\" tabindex=\"0\" aria-label=\"{}\"><table class=\"ladder\">"
        "<caption class=\"unseen\">{}</caption>{}<tbody>\n{}</tbody></table></div>\n",
        ladder.title, ladder.title, writer.heads(context.pieces()), rows);
    if (!measure.title.empty()) result += html("<p class=\"measure\">{}</p>\n", measure.title);
    return result;
}

}  // namespace flutebook::pages
