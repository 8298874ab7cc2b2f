// Amounts have the currency's coins here, and all four places on the full sheet.
#include "host/reports/quote_ladder.hpp"

#include <fmt/format.h>

#include "host/answers/made_on.hpp"
#include "host/render/number_text.hpp"
#include "host/reports/building.hpp"
#include "host/reports/labels.hpp"

namespace flutebook::reports {

namespace {

using answers::Quote;
using answers::RequestAnswer;

constexpr int ladder_share_decimals = 1;
constexpr int measure_decimals = 4;
constexpr int measure_digits = 4;

// The box itself, or the pieces of the set, at one quantity that can be made.
std::vector<const Quote*> blanks_of(const RequestAnswer& answer, std::size_t index) {
    if (answer.quantities[index].quote) return {&*answer.quantities[index].quote};
    std::vector<const Quote*> result;
    for (const auto& piece : answer.pieces) result.push_back(&*piece.quantities[index].quote);
    return result;
}

// "C1 > FG1", of a set "body on C1 > FG1; lid on C1 > DC1".
std::string made_on(const RequestAnswer& answer, std::size_t index) {
    if (answer.quantities[index].quote) return route_text(*answer.quantities[index].quote);
    std::string result;
    for (const auto& piece : answer.pieces) {
        const Quote& quote = *piece.quantities[index].quote;
        result += fmt::format("{}{}{}{}", result.empty() ? "" : "; ", piece.name, quote.is_bought ? " " : " on ",
                              route_text(quote));
    }
    return result;
}

template <typename QuoteOrSet>
LadderRow row_of(const QuoteOrSet& quote, int minor_units) {
    LadderRow row{};
    row.quantity = quote.quantity;
    row.price_per_thousand = quote.price_per_thousand;
    row.order_value = quote.sale.order_value;
    row.cost = Money::rounded(quote.cost.to_double(), minor_units).value_or(quote.cost);
    row.profit = row.order_value - row.cost;
    row.profit_share = quote.sale.profit_share;
    return row;
}

// What one box, or one set, weighs and covers.
struct BoxMeasure {
    double kg = 0, m2 = 0;
};

BoxMeasure measure_of(const std::vector<const Quote*>& blanks, double quantity) {
    BoxMeasure result;
    for (const Quote* quote : blanks) {
        result.kg += quote->mass.product_kg / quantity;
        result.m2 += quote->quantity * quote->blank.area_m2 / quantity;
    }
    return result;
}

std::string measure_text(const SheetContext& context, const BoxMeasure& box) {
    const auto shown = [](const drawings::ShownUnit& unit, double value) {
        return render::significant_number(unit(value), measure_digits, measure_decimals) + " " + unit.name;
    };
    return fmt::format("Measure: a {} weighs {} and has {} of board", context.piece(),
                       shown(context.units.mass, box.kg), shown(context.units.area, box.m2));
}

Number rate(double value) {
    return {value, measure_decimals, Number::Form::fixed};
}

// Profit over the hours that the busiest machine of the route is kept busy.
std::vector<Cell> busiest_cells(const SheetContext& context, const std::vector<const Quote*>& blanks, Money profit) {
    const auto busiest = answers::busiest_machine(blanks);
    if (!busiest) return {"-", ""};
    const int minor_units = context.plant.currency_minor_units;
    const auto by_hour = Money::rounded(profit.to_double() / busiest->hours, minor_units);
    if (!by_hour) return {"-", ""};
    return {Amount{*by_hour, minor_units},
            fmt::format("{}, {} h", busiest->name, render::number_text(busiest->hours, 2))};
}

}  // namespace

std::optional<LadderRow> ladder_row(const SheetContext& context, const RequestAnswer& answer, std::size_t index) {
    const auto& item = answer.quantities[index];
    if (!item.is_makeable()) return std::nullopt;
    const int minor_units = context.plant.currency_minor_units;
    LadderRow row = item.quote ? row_of(*item.quote, minor_units) : row_of(*item.set, minor_units);
    for (const Quote* quote : blanks_of(answer, index)) {
        row.loss_kg += quote->mass.loss_kg;
        row.issued_kg += quote->mass.issued_kg;
    }
    row.made_on = made_on(answer, index);
    return row;
}

std::vector<TableColumn> ladder_columns() {
    return {strong(number_column(price_per_thousand_label)),
            number_column(order_value_label),
            number_column("cost"),
            number_column(profit_label),
            number_column(profit_label, "of value"),
            number_column("waste", "of paper"),
            sentence_column(made_on_label)};
}

std::vector<Cell> ladder_cells(const LadderRow& row, int minor_units) {
    return {Amount{row.price_per_thousand, minor_units},
            Amount{row.order_value, minor_units},
            Amount{row.cost, minor_units},
            Amount{row.profit, minor_units},
            Percentage{row.profit_share, ladder_share_decimals},
            Percentage{row.issued_kg > 0 ? row.loss_kg / row.issued_kg : 0, ladder_share_decimals},
            row.made_on};
}

ReportSection ladder_section(const SheetContext& context, const RequestAnswer& answer) {
    ReportTable table{"ladder", {number_column(context.pieces())}};
    for (TableColumn& column : ladder_columns()) table.columns.push_back(std::move(column));
    for (std::size_t i = 0; i < answer.quantities.size(); ++i) {
        const auto row = ladder_row(context, answer, i);
        if (!row) {
            table.add({Number{answer.quantities[i].quantity(), 0}, "-", "-", "-", "-", "-", "-", cannot_be_made_label});
            continue;
        }
        std::vector<Cell> cells = {Cell(Number{row->quantity, 0}, sheet_id(row->quantity))};
        for (Cell& cell : ladder_cells(*row, context.plant.currency_minor_units)) cells.push_back(std::move(cell));
        table.add(std::move(cells));
    }
    return {fmt::format("Price ladder, {}", context.units.currency), {table}};
}

ReportSection measure_section(const SheetContext& context, const RequestAnswer& answer) {
    const drawings::ShownUnits& units = context.units;
    const drawings::ShownUnit& weight = units.mass;
    ReportTable table{"measure",
                      {number_column(context.pieces()), number_column("price a " + weight.name),
                       number_column("price a " + units.cost_area.name), number_column("profit an hour"),
                       text_column("of the busiest machine")}};
    std::string title;
    for (std::size_t i = 0; i < answer.quantities.size(); ++i) {
        const auto row = ladder_row(context, answer, i);
        if (!row) continue;
        const std::vector<const Quote*> blanks = blanks_of(answer, i);
        const BoxMeasure box = measure_of(blanks, row->quantity);
        if (title.empty()) title = measure_text(context, box);
        const double price = row->price_per_thousand.to_double() / 1000;
        std::vector<Cell> cells = {Number{row->quantity, 0}, rate(price / weight(box.kg)),
                                   rate(price / units.cost_area(box.m2))};
        for (Cell& cell : busiest_cells(context, blanks, row->profit)) cells.push_back(std::move(cell));
        table.add(std::move(cells));
    }
    return {title, {table}};
}

ReportSection warnings_section(const std::vector<base::Warning>& warnings) {
    ReportSection section{"Watch"};
    for (const base::Warning& warning : warnings)
        section.blocks.emplace_back(Note{fmt::format("{}: {}", warning.at, warning.text), Note::Kind::warning});
    return section;
}

std::string sheet_id(double quantity) {
    return fmt::format("quantity-{:.0f}", quantity);
}

std::string sheet_id(double sets, const std::string& piece) {
    return sheet_id(sets) + "-" + piece;
}

}  // namespace flutebook::reports
