// Element and attribute names are those of ECMA-376, part 1, 18.3.
#include "host/lists/sheet_rows.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <utility>

#include "host/base/characters.hpp"
#include "host/base/decimal.hpp"
#include "host/base/quoted_text.hpp"

namespace flutebook::lists {

namespace {

constexpr std::size_t most_cells = 256;  // of a row: beyond any list
constexpr std::size_t longest_cell = 32767;

std::size_t index_of(std::string_view text, std::size_t otherwise) {
    std::size_t value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    return error == std::errc{} && end == text.data() + text.size() && !text.empty() ? value : otherwise;
}

std::string trimmed_text(const std::string& text) {
    const auto first = text.find_first_not_of(' ');
    return first == std::string::npos ? "" : text.substr(first, text.find_last_not_of(' ') - first + 1);
}

}  // namespace

base::Place SheetRows::place_of(std::size_t column) const {
    return {file_ + ":" + cell_name(column, row_index_), 0, 0};
}

void SheetRows::begin(std::string_view element, const PartAttributes& attributes) {
    if (element == "row") begin_row(attributes);
    if (element == "c") begin_cell(attributes);
    if (element == "f") has_formula_ = true;
    if (element == "rPh") ++reading_aids_;
    is_value_ = element == "v" || (element == "t" && reading_aids_ == 0);
    has_value_ = has_value_ || is_value_;
}

void SheetRows::end(std::string_view element) {
    if (element == "rPh") --reading_aids_;
    if (element == "v" || element == "t") is_value_ = false;
    if (element == "c") end_cell();
    if (element == "row") end_row();
}

void SheetRows::text(std::string_view piece) {
    if (is_value_ && value_.size() <= longest_cell) value_ += piece;
}

std::optional<ListRow> SheetRows::take() {
    if (rows_.empty()) return std::nullopt;
    ListRow row = std::move(rows_.front());
    rows_.pop_front();
    return row;
}

void SheetRows::begin_row(const PartAttributes& attributes) {
    row_index_ = std::max<std::size_t>(index_of(attribute(attributes, "r"), next_row_ + 1), 1) - 1;
    next_row_ = row_index_ + 1;
    next_column_ = 0;
    row_ = ListRow{place_of(0), {}, std::nullopt};
}

void SheetRows::begin_cell(const PartAttributes& attributes) {
    column_ = next_column_;
    if (const std::string_view name = attribute(attributes, "r"); !name.empty()) {
        const auto column = column_of_cell(name);
        if (!column || *column < next_column_)
            refuse_cell("a cell out of its order: found " + base::shown(name) + "; save the workbook again");
        else
            column_ = *column;
    }
    next_column_ = column_ + 1;
    type_ = attribute(attributes, "t");
    style_ = index_of(attribute(attributes, "s"), 0);
    value_.clear();
    has_formula_ = has_value_ = false;
}

void SheetRows::end_cell() {
    std::string value = trimmed_text(value_of_cell());
    if (value.empty()) return;
    if (column_ >= most_cells) return refuse_cell("a cell beyond any list; leave it out");
    if (value.size() > longest_cell) return refuse_cell("a text longer than a cell holds; shorten it");
    if (const auto at = base::first_fault(value))
        return refuse_cell(fmt::format("found {}; expected a line of plain text", base::fault_text(value, *at)));
    while (row_.cells.size() <= column_) row_.cells.push_back({"", place_of(row_.cells.size())});
    row_.cells[column_].text = std::move(value);
}

void SheetRows::end_row() {
    if (!row_.cells.empty() || row_.fault) rows_.push_back(std::move(row_));
    row_ = ListRow{};
}

// The first of a row's faults is told.
void SheetRows::refuse_cell(const std::string& what) {
    if (!row_.fault) row_.fault = base::place_text(place_of(column_)) + ": " + what;
}

std::string SheetRows::value_of_cell() {
    if (has_formula_ && !has_value_) {
        refuse_cell("a formula without a kept result; let the spreadsheet calculate it, and save the workbook again");
        return "";
    }
    if (value_.empty() || type_ == "inlineStr" || type_ == "str") return value_;
    if (type_ == "s") return shared_text();
    if (type_.empty() || type_ == "n") return number_of_cell();
    if (type_ == "d") return value_.substr(0, 10);
    refuse_cell(fmt::format("{}: found {}; write a text or a number",
                            type_ == "b" ? "a truth value" : "an error or another kind of value", base::shown(value_)));
    return "";
}

std::string SheetRows::shared_text() {
    const std::size_t index = index_of(value_, texts_.size());
    if (index < texts_.size()) return texts_[index];
    refuse_cell("a shared text that is not there: found " + base::shown(value_) + "; save the workbook again");
    return "";
}

std::string SheetRows::number_of_cell() {
    const auto number = number_of(value_);
    if (!number) {
        refuse_cell("not a number: found " + base::shown(value_) + "; save the workbook again");
        return "";
    }
    if (style_ >= day_styles_.size() || !day_styles_[style_]) return base::canonical(base::short_decimal(*number));
    if (auto day = day_of(*number, day_count_)) return std::move(*day);
    refuse_cell("no day that all workbooks agree on: found " + base::shown(value_) + "; write it as YYYY-MM-DD");
    return "";
}

}  // namespace flutebook::lists
