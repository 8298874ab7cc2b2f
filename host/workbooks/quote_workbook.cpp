#include "host/workbooks/quote_workbook.hpp"

#include <fmt/format.h>

#include <optional>
#include <utility>

#include "host/workbooks/inputs_sheet.hpp"
#include "host/workbooks/ladder_sheet.hpp"
#include "host/workbooks/run_sheet.hpp"
#include "host/workbooks/traced_request.hpp"

namespace flutebook::workbooks {

namespace {

using answers::CostLine;
using answers::RequestAnswer;
using explain::TracedFigure;
using explain::Trail;
using render::BookCell;
using render::BookSheet;
using Look = BookCell::Look;

class BookMaker {
public:
    BookMaker(const plant::Plant& plant, const engine::Engine& engine, const RequestAnswer& answer,
              const answers::QuoteOptions& asked)
        : plant_(plant),
          answer_(answer),
          request_(plant, engine, answer, asked),
          costs_(cost_sheets(answer)),
          ladder_(add_ladder_inputs(plant, answer, inputs_)),
          run_(costs_, ladder_.quantities, request_, inputs_),
          totals_(answer.quantities.size()) {}

    render::FormulaBook book() {
        origins_.rows.push_back(
            heads({"sheet", "row", "model", "line", "step", "rests on (rows of Inputs, cells of Run)"}));
        std::vector<BookSheet> costs;
        for (const CostSheet& sheet : costs_) costs.push_back(cost_sheet(sheet));
        render::FormulaBook result;
        result.sheets.push_back(ladder_sheet(plant_, answer_, ladder_, totals_));
        for (BookSheet& sheet : costs) result.sheets.push_back(std::move(sheet));
        result.sheets.push_back(run_.sheet());
        result.sheets.push_back(inputs_.sheet());
        result.sheets.push_back(std::move(origins_));
        return result;
    }

private:
    const Trail* trail_of(const CostSheet& sheet, const CostLine& line) {
        for (const Trail& trail : request_.trails(sheet, line.line))
            if (const auto& charge = trail.figures.front().charge;
                charge && charge->quantity == line.quantity && charge->rate == line.rate)
                return &trail;
        return nullptr;
    }

    std::string cell_of(const CostSheet& sheet, const TracedFigure& figure) {
        if (const auto run = run_.cell_of(sheet, figure)) return *run;
        return InputsSheet::cell(inputs_.row_of(figure));
    }

    // A link where the number is one that its model was given, as it was or a thousandth of it.
    BookCell number_of(const CostSheet& sheet, const Trail* trail, double number) {
        for (std::size_t i = 1; trail != nullptr && i < trail->figures.size(); ++i) {
            const TracedFigure& figure = trail->figures[i];
            const bool is_whole = figure.value == number, is_thousandth = figure.value / 1000 == number;
            if (is_whole || is_thousandth)
                return formula("=" + cell_of(sheet, figure) + (is_whole ? "" : "/1000"), number);
        }
        return {number, Look::worked_out};
    }

    BookSheet cost_sheet(const CostSheet& sheet) {
        BookSheet result{sheet.name, {14, 20, 16, 14, 18, 10, 18, 16}, {}};
        result.rows.push_back(
            heads({"model", "line", "step", "ply", "quantity", "unit", "rate", "amount " + plant_.currency}));
        for (const CostLine& line : sheet.quote->lines) {
            const Trail* trail = trail_of(sheet, line);
            const std::size_t row = result.rows.size() + 1;
            result.rows.push_back(
                {said(line.plugin), said(line.line), said(line.step_name), said(line.ply_name),
                 number_of(sheet, trail, line.quantity), said(line.unit), number_of(sheet, trail, line.rate),
                 formula(fmt::format("=ROUND(E{0}*G{0}*(1+2E-15),4)", row), line.amount.to_double())});
            add_origin(sheet, row, line, trail);
        }
        const std::size_t total_row = result.rows.size() + 1;
        BookRow total(7, said("", Look::total));
        total.front() = said("cost", Look::total);
        total.push_back(
            formula(fmt::format("=ROUND(SUM(H2:H{}),4)", total_row - 1), sheet.quote->cost.to_double(), Look::total));
        result.rows.push_back(std::move(total));
        std::string& cost = totals_[sheet.quantity_index];
        cost += fmt::format("{}'{}'!$H${}", cost.empty() ? "=" : "+", sheet.name, total_row);
        return result;
    }

    void add_origin(const CostSheet& sheet, std::size_t row, const CostLine& line, const Trail* trail) {
        std::string rests;
        for (std::size_t i = 1; trail != nullptr && i < trail->figures.size(); ++i) {
            const TracedFigure& figure = trail->figures[i];
            const auto run = run_.cell_of(sheet, figure);
            rests += fmt::format("{}{} ({})", rests.empty() ? "" : ", ", figure.name,
                                 run ? *run : fmt::format("{}", inputs_.row_of(figure)));
        }
        origins_.rows.push_back({said(sheet.name),
                                 {static_cast<double>(row), Look::plain},
                                 said(line.plugin),
                                 said(line.line),
                                 said(line.step_name),
                                 said(rests)});
    }

    const plant::Plant& plant_;
    const RequestAnswer& answer_;
    TracedRequest request_;
    std::vector<CostSheet> costs_;
    InputsSheet inputs_;
    LadderInputs ladder_;
    RunSheet run_;
    std::vector<std::string> totals_;  // of each of the request's quantities: the formula of its cost
    BookSheet origins_{"Origins", {18, 8, 14, 20, 16, 100}, {}};
};

}  // namespace

render::FormulaBook quote_workbook(const plant::Plant& plant, const engine::Engine& engine, const RequestAnswer& answer,
                                   const answers::QuoteOptions& asked) {
    return BookMaker(plant, engine, answer, asked).book();
}

}  // namespace flutebook::workbooks
