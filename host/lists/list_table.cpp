// The names of the columns stand here alone; a list that was an answer is known by them.
#include "host/lists/list_table.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "host/answers/price_rules.hpp"
#include "host/base/decimal.hpp"
#include "host/contract/model.hpp"

namespace flutebook::lists {

namespace {

using answers::ItemPrice;
using answers::NotInPrice;
using answers::PriceChange;

constexpr std::size_t class_count = 5;

std::string class_name(std::size_t index) {
    return contract::to_text(static_cast<contract::CostClass>(index));
}

// Columns that stand whatever the list has.
const std::vector<std::string>& price_columns() {
    static const std::vector<std::string> names = [] {
        std::vector<std::string> result{"new_price", "cost"};
        for (std::size_t c = 0; c < class_count; ++c) result.push_back("new_price." + class_name(c));
        for (const char* name :
             {"new_price.profit", "order_value", "made_on", "roll_width", "not_in_price", "price_rules"})
            result.emplace_back(name);
        return result;
    }();
    return names;
}

const std::vector<std::string>& reason_columns() {
    static const std::vector<std::string> names = [] {
        std::vector<std::string> result;
        for (std::size_t c = 0; c < class_count; ++c) result.push_back("change." + class_name(c));
        result.emplace_back("change.profit");
        result.emplace_back("change.not_explained");
        return result;
    }();
    return names;
}

constexpr std::array difference_columns{"difference", "difference_percent"};
constexpr std::array last_columns{"warning", "error"};

template <typename Names>
bool holds(const Names& names, const std::string& name) {
    return std::find(names.begin(), names.end(), name) != names.end();
}

template <typename Names>
void append(std::vector<std::string>& header, const Names& names) {
    header.insert(header.end(), names.begin(), names.end());
}

TableValue carried(const std::string& text) {
    if (text.empty()) return std::monostate{};
    if (const auto number = base::read_decimal(text)) return PlainNumber{number->value};
    return text;
}

// "plates: tooling.plate_boxes, 845.15": the line, the column that would start it, and what is invoiced apart.
std::string missing_text(const NotInPrice& item) {
    std::string text = item.line + ":";
    if (item.setting) {
        const bool is_anothers = item.setting->find('.') != std::string::npos;
        text += " " + (is_anothers ? "" : item.plugin + ".") + *item.setting;
    }
    if (item.amount) text += (item.setting ? ", " : " ") + base::canonical(item.amount->to_double());
    return text;
}

TableValue missing_texts(const std::vector<NotInPrice>& items) {
    std::string text;
    for (const NotInPrice& item : items) text += (text.empty() ? "" : "; ") + missing_text(item);
    return text.empty() ? TableValue{} : TableValue{std::move(text)};
}

// "quantity-margin 0.2; least-order 250": the rules that made the price, one after the other, by their names in JSON.
TableValue rule_texts(const answers::PriceMaking& making) {
    std::string text;
    for (const answers::PriceRule& rule : making.rules) {
        if (!text.empty()) text += "; ";
        text += answers::to_text(rule.kind);
        text += " ";
        text += base::canonical(rule.value);
    }
    return text.empty() ? TableValue{} : TableValue{std::move(text)};
}

void add_price(std::vector<TableValue>& row, const std::optional<ItemPrice>& price) {
    if (!price) return row.resize(row.size() + price_columns().size());
    row.emplace_back(price->price);
    row.emplace_back(price->cost);
    for (const Money part : price->by_class) row.emplace_back(part);
    row.emplace_back(price->profit);
    row.emplace_back(price->order_value);
    row.emplace_back(price->made_on);
    row.push_back(carried(price->roll_width));
    row.push_back(missing_texts(price->not_in_price));
    row.push_back(rule_texts(price->making));
}

void add_difference(std::vector<TableValue>& row, const std::optional<PriceChange>& change) {
    if (!change) return row.resize(row.size() + difference_columns.size());
    row.emplace_back(change->difference);
    row.push_back(change->old == Money{} ? TableValue{} : PlainNumber{std::round(change->share * 10000) / 100});
}

void add_reason(std::vector<TableValue>& row, const std::optional<PriceChange>& change) {
    if (!change || !change->reason) return row.resize(row.size() + reason_columns().size());
    for (const Money part : change->reason->by_class) row.emplace_back(part);
    row.emplace_back(change->reason->profit);
    row.emplace_back(change->reason->not_explained);
}

std::string all_of(const std::vector<std::string>& lines) {
    if (lines.empty()) return "";
    return fmt::format("{}", fmt::join(lines, "; "));
}

std::string all_of(const std::vector<base::Warning>& warnings) {
    std::vector<std::string> texts;
    texts.reserve(warnings.size());
    for (const base::Warning& warning : warnings) texts.push_back(warning.at + ": " + warning.text);
    return all_of(texts);
}

}  // namespace

bool is_answer_column(const std::string& name) {
    return holds(price_columns(), name) || holds(reason_columns(), name) || holds(difference_columns, name) ||
           holds(last_columns, name);
}

std::vector<std::string> table_header(const ListColumns& columns) {
    std::vector<std::string> header;
    for (const ListColumn& column : columns.columns())
        if (column.kind != ListColumn::Kind::answer) header.push_back(column.name);
    append(header, price_columns());
    if (columns.has_old_price()) append(header, difference_columns);
    if (columns.has_old_price() && columns.has_price_day()) append(header, reason_columns());
    append(header, last_columns);
    return header;
}

std::vector<TableValue> table_row(const ListColumns& columns, const AnsweredRow& row) {
    std::vector<TableValue> result;
    result.reserve(columns.columns().size() + price_columns().size() + difference_columns.size() +
                   reason_columns().size() + last_columns.size());
    for (std::size_t c = 0; c < columns.columns().size(); ++c)
        if (columns.columns()[c].kind != ListColumn::Kind::answer)
            result.push_back(c < row.row.cells.size() ? carried(row.row.cells[c].text) : TableValue{});
    add_price(result, row.item.price);
    const std::optional<PriceChange> change = change_of(row);
    if (columns.has_old_price()) add_difference(result, change);
    if (columns.has_old_price() && columns.has_price_day()) add_reason(result, change);
    for (const std::string& text : {all_of(row.item.warnings), all_of(row.item.errors)})
        result.push_back(text.empty() ? TableValue{} : TableValue{text});
    return result;
}

std::optional<PriceChange> change_of(const AnsweredRow& row) {
    if (!row.old || !row.item.price) return std::nullopt;
    const ItemPrice& now = *row.item.price;
    const Money old = Money::rounded(row.old->per_thousand, 4).value_or(Money{});
    PriceChange result{old, now.price - old, 0};
    if (old != Money{}) result.share = result.difference.to_double() / old.to_double();
    if (!row.then) return result;
    PriceChange::Reason reason{{}, now.profit - row.then->profit, row.then->price - old};
    for (std::size_t c = 0; c < class_count; ++c) reason.by_class[c] = now.by_class[c] - row.then->by_class[c];
    result.reason = reason;
    return result;
}

answers::ListedItem listed_item(const ListColumns& columns, const AnsweredRow& row) {
    answers::ListedItem result;
    result.at = base::place_text(row.row.place);
    result.request = columns.text(row.row, "request");
    result.customer = columns.text(row.row, "customer");
    result.quantity = columns.text(row.row, "quantity");
    result.price = row.item.price;
    result.change = change_of(row);
    result.warnings = row.item.warnings;
    result.errors = row.item.errors;
    return result;
}

}  // namespace flutebook::lists
