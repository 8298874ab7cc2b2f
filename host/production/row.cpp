// Turns fields into a row. Checks every field, so that all its errors are reported together.
#include "host/production/row.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <utility>

#include "host/base/decimal.hpp"
#include "host/base/quoted_text.hpp"

namespace flutebook::production {

namespace {

using base::shown;

constexpr std::size_t longest_line_of_text = 500;
// A ledger keeps no others: a day of the year 205 is a slip of the keyboard.
constexpr std::chrono::year first_year{2000}, last_year{2999};

std::string found(std::string_view field) {
    return "found " + (field.empty() ? std::string("nothing") : shown(field));
}

std::string expected(const ColumnRule& rule) {
    switch (rule.reading) {
        case Reading::name:
            return fmt::format("a name of at most {} bytes", longest_name);
        case Reading::line:
            return fmt::format("a text of at most {} bytes", longest_line_of_text);
        case Reading::day:
            return "a day as YYYY-MM-DD, from the year 2000 to 2999";
        case Reading::whole:
            return fmt::format("a whole number from {} to {}", rule.low, rule.high);
        case Reading::decimal:
            break;
    }
    if (rule.column == DocumentColumn::moisture) return fmt::format("a share from 0 to {}: 12 % is 0.12", rule.high);
    return fmt::format("a number from {} to {}", rule.low, rule.high);
}

std::string fault(const ColumnRule& rule, std::string_view field) {
    return found(field) + "; expected " + expected(rule);
}

// 1.550, 12.000: where commas are the decimals it is a thousandfold of what it is where points are.
bool may_part_thousands(std::string_view field) {
    const auto digits = field.substr(field.starts_with('-') ? 1 : 0);
    const auto point = digits.find('.');
    return point != std::string_view::npos && point <= 3 && digits.size() - point - 1 == 3 && digits.front() != '0';
}

std::string without_point(std::string_view field, std::string_view instead) {
    std::string text(field);
    return text.replace(text.find('.'), 1, instead);
}

}  // namespace

std::optional<std::string> RowReader::read_number(const ColumnRule& rule, std::string_view field, DocumentRow& row) {
    const auto decimal = base::read_decimal(field);
    if (!decimal) return fault(rule, field) + (rule.column == DocumentColumn::moisture ? "" : " in plain figures");
    if (decimal->mark == ',' && separator_ == ',') return found(field) + "; expected a decimal point";
    if (decimal->mark != '\0') {
        if (mark_ == '\0' && separator_ == ';' && decimal->mark == '.' && may_part_thousands(field))
            return fmt::format("{}, whose point may part thousands between semicolons; expected {} or {}", found(field),
                               without_point(field, ""), without_point(field, ","));
        if (mark_ == '\0') {
            mark_ = decimal->mark;
            mark_line_ = row.line;
        }
        // Either of them might have been meant to part thousands.
        if (mark_ != decimal->mark)
            return fmt::format("{}; expected a decimal {}, as in line {} of this file", found(field),
                               mark_ == '.' ? "point" : "comma", mark_line_);
    }
    if (rule.reading == Reading::whole && decimal->value != std::floor(decimal->value)) return fault(rule, field);
    if (decimal->value < rule.low || decimal->value > rule.high) return fault(rule, field);
    row.fields_[static_cast<std::size_t>(rule.column)].number = decimal->value;
    return std::nullopt;
}

// Why the field may not stand there; nothing where it may.
std::optional<std::string> RowReader::read_field(const ColumnRule& rule, std::string_view field, DocumentRow& row) {
    if (field.empty()) return rule.need == ColumnRule::Need::always ? std::optional(fault(rule, field)) : std::nullopt;
    row.fields_[static_cast<std::size_t>(rule.column)].text = field;
    switch (rule.reading) {
        case Reading::name:
            if (field.size() > longest_name) return fault(rule, field);
            break;
        case Reading::line:
            if (field.size() > longest_line_of_text) return fault(rule, field);
            break;
        case Reading::day: {
            const auto day = base::parse_date(field);
            if (!day || day->year() < first_year || day->year() > last_year) return fault(rule, field);
            row.date = *day;
            break;
        }
        case Reading::whole:
        case Reading::decimal:
            return read_number(rule, field, row);
    }
    return std::nullopt;
}

std::variant<DocumentRow, RowErrors> RowReader::read(const base::CsvLine& line) {
    const auto& columns = form_.columns;
    if (line.fields.size() != fields_)
        return RowErrors{
            {"", fmt::format("found {} fields; expected {}, as in the header row", line.fields.size(), fields_)}};
    DocumentRow row;
    row.kind = form_.kind;
    row.line = line.number;
    RowErrors objections;
    for (std::size_t i = 0; i < line.fields.size(); ++i) {
        const auto& rule = columns[i];
        if (auto why = read_field(rule, line.fields[i], row)) {
            objections.push_back({name_of(rule.column), std::move(*why)});
            continue;
        }
        if (line.fields[i].empty()) continue;
        const auto number = row.number(rule.column);
        row.content += name_of(rule.column);
        row.content += '=';
        row.content += number ? base::canonical(*number) : std::string(line.fields[i]);
        row.content += '\n';
    }
    if (!objections.empty()) return objections;
    return row;
}

bool RowReader::take_posted(const ColumnRule& rule, std::string_view value, DocumentRow& row) {
    auto& field = row.fields_[static_cast<std::size_t>(rule.column)];
    field.text = value;
    if (rule.reading == Reading::day) {
        const auto day = base::parse_date(value);
        if (day) row.date = *day;
        return day.has_value();
    }
    if (rule.reading != Reading::whole && rule.reading != Reading::decimal) return true;
    // Not as a person writes it: canonical() may have used an exponent.
    double number = 0;
    const auto* past = value.data() + value.size();
    const auto read = std::from_chars(value.data(), past, number);
    if (read.ec != std::errc{} || read.ptr != past) return false;
    field.number = number;
    return true;
}

std::optional<DocumentRow> RowReader::read_posted(const DocumentFormat& form, const std::string& content) {
    DocumentRow row;
    row.kind = form.kind;
    row.line = 0;
    row.content = content;
    for (std::string_view left = content; !left.empty();) {
        const auto line = left.substr(0, left.find('\n'));
        left.remove_prefix(std::min(line.size() + 1, left.size()));
        const auto equals = line.find('=');
        const auto rule = std::find_if(form.columns.begin(), form.columns.end(), [&](const ColumnRule& column_rule) {
            return line.substr(0, equals) == name_of(column_rule.column);
        });
        if (equals == std::string_view::npos || rule == form.columns.end()) return std::nullopt;
        if (!take_posted(*rule, line.substr(equals + 1), row)) return std::nullopt;
    }
    for (const auto& rule : form.columns)
        if (rule.need == ColumnRule::Need::always && row.at(rule.column).text.empty()) return std::nullopt;
    return row;
}

std::variant<Document, Document::UnreadableDocument> Document::open(const std::string& file) {
    auto opened = base::CsvReader::open(file);
    if (auto* why = std::get_if<std::string>(&opened)) return UnreadableDocument{0, std::move(*why)};
    auto& csv = std::get<base::CsvReader>(opened);
    const auto* header = csv.next();
    if (header == nullptr) return UnreadableDocument{0, "found nothing in it; expected a header row"};
    if (header->fault) return UnreadableDocument{header->number, *header->fault};
    const auto form = find_form(header->fields);
    if (const auto* why = std::get_if<std::string>(&form)) return UnreadableDocument{header->number, *why};
    const auto fields = header->fields.size();
    return Document(std::move(csv), *std::get<const DocumentFormat*>(form), fields);
}

std::optional<ReadLine> Document::next() {
    const auto* line = csv_.next();
    if (line == nullptr) return std::nullopt;
    if (line->fault) return ReadLine{line->number, RowErrors{{"", *line->fault}}};
    return ReadLine{line->number, rows_.read(*line)};
}

}  // namespace flutebook::production
