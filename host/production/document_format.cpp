// The table of documents. The bounds keep every product of a row within the range of a gram counter; a larger mass,
// length or count is a typing error.
#include "host/production/document_format.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "host/base/quoted_text.hpp"

namespace flutebook::production {

namespace {

using Need = ColumnRule::Need;

constexpr double most_kg_in_a_row = 1e8;
constexpr double most_metres = 1e6;
constexpr double most_pieces = 1e9;
constexpr double most_money = 1e9;

constexpr ColumnRule name(DocumentColumn column) {
    return {column, Reading::name, 0, 0, Need::always};
}
constexpr ColumnRule whole(DocumentColumn column, double low = 0, double high = most_pieces) {
    return {column, Reading::whole, low, high, Need::always};
}
constexpr ColumnRule decimal(DocumentColumn column, double low, double high) {
    return {column, Reading::decimal, low, high, Need::always};
}
constexpr ColumnRule at_times(ColumnRule rule) {
    rule.need = Need::at_times;
    return rule;
}

constexpr ColumnRule ref = name(DocumentColumn::ref);
constexpr ColumnRule day{DocumentColumn::date, Reading::day, 0, 0, Need::always};
constexpr ColumnRule shift = name(DocumentColumn::shift);
constexpr ColumnRule order_number = name(DocumentColumn::order);
constexpr ColumnRule weight = decimal(DocumentColumn::kg, 0, most_kg_in_a_row);
constexpr ColumnRule note{DocumentColumn::note, Reading::line, 0, 0, Need::at_times};

// mm, as in the plant's files.
constexpr ColumnRule roll_width = at_times(decimal(DocumentColumn::roll_width, 1, 1e5));
constexpr ColumnRule whole_web = at_times(decimal(DocumentColumn::web, 1, 1e5));
constexpr ColumnRule outs = at_times(whole(DocumentColumn::outs, 1, 1000));
constexpr ColumnRule metres = decimal(DocumentColumn::metres, 0, most_metres);
constexpr ColumnRule change = decimal(DocumentColumn::order_change_metres, 0, most_metres);
constexpr ColumnRule sent = at_times(decimal(DocumentColumn::sent, 0, most_kg_in_a_row));
// A share; 1 would be nothing but water.
constexpr ColumnRule moisture = at_times(decimal(DocumentColumn::moisture, 0, 0.99));
constexpr ColumnRule per_tonne = decimal(DocumentColumn::per_tonne, 0, 1e6);
constexpr ColumnRule amount = decimal(DocumentColumn::amount, -most_money, most_money);

std::vector<DocumentFormat> all_forms() {
    const auto grade = name(DocumentColumn::grade);
    const auto corrugator = name(DocumentColumn::corrugator);
    const auto good_sheets = whole(DocumentColumn::good_sheets);
    return {
        {Kind::paper,
         {ref, day, shift, corrugator, name(DocumentColumn::paper),
          decimal(DocumentColumn::kg, -most_kg_in_a_row, most_kg_in_a_row), note}},
        {Kind::corrugator_run,
         {ref, day, shift, corrugator, order_number, roll_width, outs, metres, change, good_sheets, note}},
        {Kind::corrugator_run,
         {ref, day, shift, corrugator, order_number, roll_width, outs, metres, change, good_sheets, whole_web, note}},
        {Kind::corrugator_run, {ref, day, shift, corrugator, order_number, metres, change, good_sheets, note}},
        {Kind::converter_run,
         {ref, day, shift, name(DocumentColumn::converter), order_number, whole(DocumentColumn::fed),
          whole(DocumentColumn::setup_sheets), whole(DocumentColumn::rejected),
          at_times(whole(DocumentColumn::good_boxes)), note}},
        {Kind::weighed_scrap,
         {ref, day, shift, name(DocumentColumn::centre), name(DocumentColumn::cause), weight, note}},
        {Kind::bale, {ref, day, shift, grade, weight, note}},
        {Kind::ticket, {ref, day, name(DocumentColumn::mill), grade, sent, weight, moisture, per_tonne, note}},
        {Kind::ticket, {ref, day, name(DocumentColumn::mill), grade, weight, moisture, per_tonne, note}},
        {Kind::centre_cost, {ref, day, name(DocumentColumn::centre), name(DocumentColumn::cost_class), amount, note}},
        {Kind::count,
         {ref, day, name(DocumentColumn::account), at_times(name(DocumentColumn::of)), weight,
          at_times(decimal(DocumentColumn::amount, 0, most_money)), note}},
    };
}

const std::vector<DocumentFormat>& forms() {
    static const std::vector<DocumentFormat> all = all_forms();
    return all;
}

bool has_header(const DocumentFormat& form, const std::vector<std::string_view>& header) {
    const auto count = form.columns.size();
    if (header.size() != count && header.size() + 1 != count) return false;
    return std::equal(header.begin(), header.end(), form.columns.begin(),
                      [](std::string_view found, const ColumnRule& rule) { return found == name_of(rule.column); });
}

std::string joined(const DocumentFormat& form) {
    std::vector<const char*> names;
    for (const auto& rule : form.columns)
        if (rule.column != DocumentColumn::note) names.push_back(name_of(rule.column));
    return fmt::format("{}", fmt::join(names, ","));
}

// Columns that both have, wherever they stand.
std::size_t in_common(const DocumentFormat& form, const std::vector<std::string_view>& header) {
    return static_cast<std::size_t>(
        std::count_if(form.columns.begin(), form.columns.end(), [&](const ColumnRule& rule) {
            return std::find(header.begin(), header.end(), name_of(rule.column)) != header.end();
        }));
}

}  // namespace

const char* name_of(Kind kind) {
    static constexpr std::array names = {"paper", "corrugator-run", "converter-run", "weighed-scrap",
                                         "bale",  "ticket",         "centre-cost",   "count"};
    return names[static_cast<std::size_t>(kind)];
}

const char* name_of(DocumentColumn column) {
    static constexpr std::array<const char*, column_count> names = {"ref",
                                                                    "date",
                                                                    "shift",
                                                                    "corrugator",
                                                                    "paper",
                                                                    "kg",
                                                                    "order",
                                                                    "roll_width",
                                                                    "outs",
                                                                    "metres",
                                                                    "order_change_metres",
                                                                    "good_sheets",
                                                                    "converter",
                                                                    "fed",
                                                                    "setup_sheets",
                                                                    "rejected",
                                                                    "good_boxes",
                                                                    "centre",
                                                                    "cause",
                                                                    "grade",
                                                                    "mill",
                                                                    "sent",
                                                                    "moisture",
                                                                    "per_tonne",
                                                                    "class",
                                                                    "amount",
                                                                    "account",
                                                                    "of",
                                                                    "web",
                                                                    "note"};
    return names[static_cast<std::size_t>(column)];
}

std::variant<const DocumentFormat*, std::string> find_form(const std::vector<std::string_view>& header) {
    const DocumentFormat* closest = nullptr;
    double closest_share = 0;
    for (const auto& form : forms()) {
        if (has_header(form, header)) return &form;
        const auto common = static_cast<double>(in_common(form, header));
        const auto share = common / static_cast<double>(header.size() + form.columns.size());
        if (share <= closest_share) continue;
        closest = &form;
        closest_share = share;
    }
    const auto found = fmt::format("{}", fmt::join(header, ","));
    const auto expected = closest_share > 0.2 ? "the header row " + joined(*closest) : "the header row of a document";
    return "found the header row " + base::shown(found) + "; expected " + expected;
}

const DocumentFormat& widest_form(Kind kind) {
    const DocumentFormat* widest = nullptr;
    for (const auto& form : forms())
        if (form.kind == kind && (widest == nullptr || form.columns.size() > widest->columns.size())) widest = &form;
    return *widest;
}

}  // namespace flutebook::production
