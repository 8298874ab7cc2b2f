// The text of a cell is the same in every form.
#include "host/render/report.hpp"

#include "host/base/inches.hpp"
#include "host/render/number_text.hpp"

namespace flutebook::render {

namespace {

std::string with_sign(std::string text, Sign sign) {
    const bool has_one = text.empty() || text.front() == '-';
    return sign == Sign::always && !has_one ? "+" + text : text;
}

std::string digits_of(const Number& number) {
    if (number.unit == "in")
        if (std::optional<std::string> ruler = base::whole_sixteenths(number.value)) return *std::move(ruler);
    switch (number.form) {
        case Number::Form::fixed:
            return number_text(number.value, number.decimals);
        case Number::Form::brief:
            return brief_number(number.value, number.decimals);
        case Number::Form::significant:
            break;
    }
    return significant_number(number.value, number.digits, number.decimals);
}

struct ToText {
    CellText operator()(std::monostate) const { return {}; }
    CellText operator()(const std::string& text) const { return {text, ""}; }
    CellText operator()(const Code& code) const { return {code.text, ""}; }
    CellText operator()(const Number& number) const { return {with_sign(digits_of(number), number.sign), number.unit}; }
    CellText operator()(const Amount& amount) const {
        return {with_sign(coin_text(amount.money, amount.decimals), amount.sign), amount.currency};
    }
    CellText operator()(const Percentage& percentage) const {
        return {with_sign(number_text(percentage.share * 100, percentage.decimals), percentage.sign),
                percentage.base.empty() ? "%" : "% " + percentage.base};
    }
    CellText operator()(base::Date date) const { return {base::to_string(date), ""}; }
};

void leave_out_repeats(const std::vector<TableColumn>& columns, const TableRow& above, TableRow& row) {
    if (row.kind != TableRow::Kind::item || above.kind != TableRow::Kind::item) return;
    for (std::size_t c = 0; c < columns.size(); ++c) {
        if (columns[c].repeats == TableColumn::Repeats::shown) continue;
        if (whole_text(row.cells[c]) != whole_text(above.cells[c])) return;
        row.cells[c] = {};
    }
}

}  // namespace

std::string TableColumn::head() const {
    return title.empty() || unit.empty() ? title + unit : title + " " + unit;
}

CellText cell_text(const Cell& cell) {
    return std::visit(ToText{}, cell.value);
}

std::string whole_text(const Cell& cell) {
    CellText result = cell_text(cell);
    return result.unit.empty() ? result.text : result.text + " " + result.unit;
}

std::optional<double> raw_number(const Cell& cell) {
    if (const auto* number = std::get_if<Number>(&cell.value)) return number->value;
    if (const auto* amount = std::get_if<Amount>(&cell.value)) return amount->money.to_double();
    if (const auto* percentage = std::get_if<Percentage>(&cell.value)) return percentage->share;
    return std::nullopt;
}

bool is_empty(const Cell& cell) {
    return std::holds_alternative<std::monostate>(cell.value) || whole_text(cell).empty();
}

ReportTable page_table(ReportTable table) {
    for (TableRow& row : table.rows) row.cells.resize(table.columns.size());
    for (std::size_t c = table.columns.size(); c-- > 0;) {
        if (table.columns[c].shown == TableColumn::Shown::everywhere) continue;
        table.columns.erase(table.columns.begin() + static_cast<std::ptrdiff_t>(c));
        for (TableRow& row : table.rows) row.cells.erase(row.cells.begin() + static_cast<std::ptrdiff_t>(c));
    }
    for (std::size_t r = table.rows.size(); r-- > 1;)
        leave_out_repeats(table.columns, table.rows[r - 1], table.rows[r]);
    return table;
}

std::vector<std::string> row_names(const ReportTable& table) {
    std::vector<std::string> result, above;
    for (const TableRow& row : table.rows) {
        above.resize(row.level);
        above.push_back(row.cells.empty() ? "" : whole_text(row.cells[0]));
        std::string name;
        for (const std::string& part : above)
            if (!part.empty()) name += (name.empty() ? "" : ": ") + part;
        result.push_back(std::move(name));
    }
    return result;
}

}  // namespace flutebook::render
