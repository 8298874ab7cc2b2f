#include "host/workbooks/quote_workbook.hpp"

#include <fmt/format.h>

#include <cmath>
#include <set>
#include <tuple>

#include "host/base/place.hpp"
#include "host/quoting/quote.hpp"

namespace flutebook::workbooks {

namespace {

using answers::CostLine;
using answers::Quote;
using answers::RequestAnswer;
using explain::TracedFigure;
using explain::Trail;
using render::BookCell;
using render::BookFormula;
using render::BookSheet;
using Look = BookCell::Look;
using Row = std::vector<BookCell>;

BookCell said(std::string text, Look look = Look::plain) {
    return {std::move(text), look};
}

BookCell formula(std::string text, double result, Look look = Look::plain) {
    return {BookFormula{std::move(text), result}, look};
}

Row heads(const std::vector<std::string>& titles) {
    Row row;
    for (const std::string& title : titles) row.push_back(said(title, Look::head));
    return row;
}

// "A", "Z", "AA".
std::string column_name(std::size_t column) {
    const std::string last(1, static_cast<char>('A' + column % 26));
    return column < 26 ? last : column_name(column / 26 - 1) + last;
}

// One sheet of costs: a quantity, or one piece of a set at it.
struct CostSheet {
    std::string name, piece;
    std::size_t quantity_index;
    const Quote* quote;
    std::size_t total_row = 0;
};

std::vector<CostSheet> cost_sheets(const RequestAnswer& answer) {
    std::vector<CostSheet> result;
    for (std::size_t i = 0; i < answer.quantities.size(); ++i) {
        if (answer.quantities[i].quote)
            result.push_back({fmt::format("Cost {}", i + 1), "", i, &*answer.quantities[i].quote});
        for (std::size_t p = 0; answer.quantities[i].set && p < answer.pieces.size(); ++p)
            result.push_back({fmt::format("Cost {} piece {}", i + 1, p + 1), answer.pieces[p].name, i,
                              &*answer.pieces[p].quantities[i].quote});
    }
    return result;
}

// The numbers that lines rest on, each once, in the order they are met.
class Inputs {
public:
    /// Its row, from 1, in the sheet.
    std::size_t row_of(const TracedFigure& figure) {
        const Key key{figure.name, figure.where, figure.unit, figure.value};
        const auto [found, is_new] = rows_.emplace(key, first_row + figures_.size());
        if (is_new) figures_.push_back(figure);
        return found->second;
    }

    static std::string cell(std::size_t row) { return fmt::format("Inputs!$C${}", row); }

    [[nodiscard]] BookSheet sheet(const orders::Request& request) const {
        BookSheet result{"Inputs", {32, 22, 18, 12, 12, 60, 48}, {}};
        result.rows.push_back(heads({"name", "where", "value", "unit", "kind", "what it is", "file:line:column"}));
        result.rows.push_back(
            {said("margin"), said(""), BookCell{}, said("1"), said("request"), said("share of the price"), said("")});
        if (request.margin) {
            result.rows.back()[2] = {*request.margin, Look::input};
            result.rows.back().back() = said(base::place_text(request.places, "margin", request.place));
        } else {
            result.rows.back()[4] = said("plant");
            result.rows.back()[5] = said("by the plant's rules, for each quantity in the sheet Quote");
        }
        for (const TracedFigure& figure : figures_) {
            std::string places;
            for (const base::Place& place : figure.places)
                places += (places.empty() ? "" : ", ") + base::place_text(place);
            result.rows.push_back(
                {said(figure.name),
                 said(figure.where),
                 {figure.value, figure.kind == TracedFigure::Kind::provided ? Look::worked_out : Look::input},
                 said(figure.unit),
                 said(explain::to_text(figure.kind)),
                 said(figure.meaning),
                 said(places)});
        }
        return result;
    }

private:
    using Key = std::tuple<std::string, std::string, std::string, double>;
    static constexpr std::size_t first_row = 3;
    std::map<Key, std::size_t> rows_;
    std::vector<TracedFigure> figures_;
};

class BookMaker {
public:
    BookMaker(const plant::Plant& plant, const engine::Engine& engine, const RequestAnswer& answer, unsigned threads)
        : plant_(plant), engine_(engine), answer_(answer), threads_(threads), sheets_(cost_sheets(answer)) {
        for (const CostSheet& sheet : sheets_)
            for (const CostLine& line : sheet.quote->lines) names_.insert(line.line);
    }

    render::FormulaBook book() {
        for (const std::string& name : names_) explain_line(name);
        std::vector<BookSheet> costs;
        origins_.rows.push_back(heads({"sheet", "row", "model", "line", "step", "rests on (rows of Inputs)"}));
        for (CostSheet& sheet : sheets_) costs.push_back(cost_sheet(sheet));
        render::FormulaBook result;
        result.sheets.push_back(quote_sheet());
        for (BookSheet& sheet : costs) result.sheets.push_back(std::move(sheet));
        result.sheets.push_back(inputs_.sheet(answer_.request));
        result.sheets.push_back(std::move(origins_));
        return result;
    }

private:
    // The same request again, with what this line came from: each of its amounts has a trail of its own.
    void explain_line(const std::string& name) {
        answers::QuoteOptions asked;
        asked.threads = threads_;
        asked.explain = name;
        asked.has_alone = false;
        const RequestAnswer again = quoting::quote(plant_, engine_, answer_.request, asked);
        for (const CostSheet& sheet : cost_sheets(again)) trails_[{sheet.name, name}] = sheet.quote->trails;
    }

    const Trail* trail_of(const CostSheet& sheet, const CostLine& line) const {
        for (const Trail& trail : trails_.at({sheet.name, line.line}))
            if (const auto& charge = trail.figures.front().charge;
                charge && charge->quantity == line.quantity && charge->rate == line.rate)
                return &trail;
        return nullptr;
    }

    // A link where the number is one that its model was given, as it was or a thousandth of it.
    BookCell number_of(const Trail* trail, double number) {
        if (trail != nullptr)
            for (std::size_t i = 1; i < trail->figures.size(); ++i) {
                const TracedFigure& figure = trail->figures[i];
                const bool is_whole = figure.value == number, is_thousandth = figure.value / 1000 == number;
                if (!is_whole && !is_thousandth) continue;
                const std::string cell = Inputs::cell(inputs_.row_of(figure));
                return formula("=" + cell + (is_whole ? "" : "/1000"), number);
            }
        return {number, Look::worked_out};
    }

    BookSheet cost_sheet(CostSheet& sheet) {
        BookSheet result{sheet.name, {14, 20, 16, 14, 18, 10, 18, 16}, {}};
        result.rows.push_back(
            heads({"model", "line", "step", "ply", "quantity", "unit", "rate", "amount " + plant_.currency}));
        for (const CostLine& line : sheet.quote->lines) {
            const Trail* trail = trail_of(sheet, line);
            const std::size_t row = result.rows.size() + 1;
            result.rows.push_back(
                {said(line.plugin), said(line.line), said(line.step_name), said(line.ply_name),
                 number_of(trail, line.quantity), said(line.unit), number_of(trail, line.rate),
                 formula(fmt::format("=ROUND(E{0}*G{0}*(1+2E-15),4)", row), line.amount.to_double())});
            add_origin(sheet, row, line, trail);
        }
        sheet.total_row = result.rows.size() + 1;
        result.rows.push_back({said("cost", Look::total), said("", Look::total), said("", Look::total),
                               said("", Look::total), said("", Look::total), said("", Look::total),
                               said("", Look::total),
                               formula(fmt::format("=ROUND(SUM(H2:H{}),4)", sheet.total_row - 1),
                                       sheet.quote->cost.to_double(), Look::total)});
        return result;
    }

    void add_origin(const CostSheet& sheet, std::size_t row, const CostLine& line, const Trail* trail) {
        std::string rests;
        for (std::size_t i = 1; trail != nullptr && i < trail->figures.size(); ++i)
            rests += fmt::format("{}{} ({})", rests.empty() ? "" : ", ", trail->figures[i].name,
                                 inputs_.row_of(trail->figures[i]));
        origins_.rows.push_back({said(sheet.name),
                                 {static_cast<double>(row), Look::plain},
                                 said(line.plugin),
                                 said(line.line),
                                 said(line.step_name),
                                 said(rests)});
    }

    BookSheet quote_sheet() const {
        BookSheet result{"Quote", {34}, {}};
        const bool is_set = !answer_.pieces.empty();
        result.rows = {heads({is_set ? "sets" : "boxes"}),
                       {said("cost " + plant_.currency)},
                       {said("cost per thousand")},
                       {said("price per thousand", Look::head)},
                       {said("order value")},
                       {said("profit")},
                       {said("margin, share of the price")},
                       {said("made by")}};
        for (std::size_t i = 0; i < answer_.quantities.size(); ++i) {
            if (!answer_.quantities[i].is_makeable()) continue;
            result.widths.push_back(18);
            const auto& item = answer_.quantities[i];
            item.quote ? add_column(result, i, *item.quote) : add_column(result, i, *item.set);
        }
        return result;
    }

    template <typename QuoteOrSet>
    void add_column(BookSheet& sheet, std::size_t index, const QuoteOrSet& quote) const {
        std::string cost;
        for (const CostSheet& part : sheets_)
            if (part.quantity_index == index)
                cost += fmt::format("{}'{}'!$H${}", cost.empty() ? "=" : "+", part.name, part.total_row);
        const std::string c = column_name(sheet.rows[0].size());
        const int coins = plant_.currency_minor_units;
        const double cost_of_thousand = quote.cost.to_double() / quote.quantity * 1000;
        sheet.rows[0].push_back({quote.quantity, Look::input});
        sheet.rows[1].push_back(formula(cost, quote.cost.to_double()));
        sheet.rows[2].push_back(formula(fmt::format("={0}2/{0}1*1000", c), cost_of_thousand));
        sheet.rows[3].push_back(price_cell(c, quote));
        sheet.rows[4].push_back(
            formula(fmt::format("=ROUND({0}4*{0}1/1000*(1+2E-15),{1})", c, coins), quote.sale.order_value.to_double()));
        sheet.rows[5].push_back(formula(fmt::format("=ROUND({0}5-{0}2,4)", c), quote.sale.profit.to_double()));
        sheet.rows[6].push_back(margin_cell(quote.making));
        sheet.rows[7].push_back(said(rules_text(quote.making)));
    }

    // A price that another rule of the plant raised after the margin is what that rule made of it.
    template <typename QuoteOrSet>
    BookCell price_cell(const std::string& c, const QuoteOrSet& quote) const {
        if (quote.making.rules.size() > 1) return {quote.price_per_thousand.to_double(), Look::worked_out};
        return formula(fmt::format("=ROUND({0}2/{0}1*1000/(1-{0}7)*(1+2E-15),{1})", c, plant_.currency_minor_units),
                       quote.price_per_thousand.to_double(), Look::total);
    }

    BookCell margin_cell(const answers::PriceMaking& making) const {
        if (answer_.request.margin) return formula("=" + Inputs::cell(2), *answer_.request.margin);
        return {making.rules.empty() ? 0 : making.rules.front().value, Look::input};
    }

    static std::string rules_text(const answers::PriceMaking& making) {
        std::string result;
        for (const answers::PriceRule& rule : making.rules)
            result += fmt::format("{}{} {} ({})", result.empty() ? "" : "; ", answers::to_text(rule.kind), rule.value,
                                  rule.at);
        return result;
    }

    const plant::Plant& plant_;
    const engine::Engine& engine_;
    const RequestAnswer& answer_;
    unsigned threads_;
    std::vector<CostSheet> sheets_;
    std::set<std::string> names_;
    std::map<std::pair<std::string, std::string>, std::vector<Trail>> trails_;  // by sheet and line
    Inputs inputs_;
    BookSheet origins_{"Origins", {18, 8, 14, 20, 16, 100}, {}};
};

}  // namespace

render::FormulaBook quote_workbook(const plant::Plant& plant, const engine::Engine& engine, const RequestAnswer& answer,
                                   unsigned threads) {
    return BookMaker(plant, engine, answer, threads).book();
}

}  // namespace flutebook::workbooks
