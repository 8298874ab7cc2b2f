#include "host/workbooks/run_sheet.hpp"

#include <fmt/format.h>

#include "host/answers/made_on.hpp"
#include "host/workbooks/run_column.hpp"

namespace flutebook::workbooks {

namespace {

constexpr std::size_t label_columns = 3;

RunShape shape_of(TracedRequest& request, const CostSheet& costs) {
    const explain::TracedFigure& parting = request.trails(costs, "step.parting").front().figures.front();
    return {costs.quote->route.size(), static_cast<std::size_t>(parting.value),
            request.trails(costs, "ply.grammage").size()};
}

std::string column_head(const CostSheet& costs) {
    return fmt::format("{:.0f}{}{}", costs.quote->quantity, costs.piece.empty() ? "" : " ", costs.piece);
}

std::string made_by(const answers::Quote& quote) {
    return fmt::format("{}{}{}", answers::maker_text(quote), quote.route.empty() ? "" : ", ",
                       fmt::join(quote.route, ", "));
}

}  // namespace

RunSheet::RunSheet(const std::vector<CostSheet>& costs, const std::vector<std::string>& quantity_cells,
                   TracedRequest& request, InputsSheet& inputs)
    : sheet_{"Run", {20, 10, 8}, {}} {
    std::vector<std::pair<RunShape, const answers::Quote*>> shapes;
    for (const CostSheet& one : costs) shapes.emplace_back(shape_of(request, one), one.quote);
    const RunRows rows(shapes);
    sheet_.rows.push_back(heads({"number", "at", "unit"}));
    sheet_.rows.push_back({said("made by"), said(""), said("")});
    for (BookRow& label : rows.labels()) sheet_.rows.push_back(std::move(label));
    for (std::size_t i = 0; i < costs.size(); ++i) {
        const std::string letter = column_name(label_columns + i);
        const RunColumn column = run_column(
            {rows, costs[i], shapes[i].first, letter, quantity_cells.at(costs[i].quantity_index), request, inputs});
        sheet_.widths.push_back(18);
        sheet_.rows[0].push_back(said(column_head(costs[i]), render::BookCell::Look::head));
        sheet_.rows[1].push_back(said(made_by(*costs[i].quote)));
        for (std::size_t r = 2; r < sheet_.rows.size(); ++r) {
            const auto found = column.cells.find(r + 1);
            sheet_.rows[r].push_back(found == column.cells.end() ? render::BookCell{} : found->second);
        }
        for (const auto& [known, cell] : column.known)
            cells_[{costs[i].name, known.first, known.second}] = "Run!" + cell;
    }
}

std::optional<std::string> RunSheet::cell_of(const CostSheet& costs, const explain::TracedFigure& figure) const {
    if (figure.kind == explain::TracedFigure::Kind::setting) return std::nullopt;
    const auto found = cells_.find({costs.name, figure.name, figure.where});
    return found == cells_.end() ? std::nullopt : std::optional(found->second);
}

}  // namespace flutebook::workbooks
