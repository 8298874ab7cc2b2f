#include "host/production/row_validation.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "host/base/errors.hpp"
#include "host/base/near_spellings.hpp"
#include "host/base/quoted_text.hpp"
#include "host/production/entry_from_row.hpp"
#include "host/production/scrap.hpp"

namespace flutebook::production {

namespace {

using base::shown;

template <typename Entry>
const Entry* find(const std::vector<Entry>& entries, const std::string& code) {
    const auto found =
        std::find_if(entries.begin(), entries.end(), [&](const Entry& entry) { return entry.code == code; });
    return found == entries.end() ? nullptr : &*found;
}

template <typename Entry>
std::vector<std::string> codes(const std::vector<Entry>& entries) {
    std::vector<std::string> all;
    for (const auto& entry : entries) all.push_back(entry.code);
    return all;
}

}  // namespace

void RowValidation::expect(DocumentColumn column, const std::string& expected) {
    const auto& text = row_.text(column);
    object(column, "found " + (text.empty() ? std::string("nothing") : shown(text)) + "; expected " + expected);
}

void RowValidation::object_to_name(DocumentColumn column, const std::string& what,
                                   const std::vector<std::string>& known) {
    const auto& text = row_.text(column);
    const auto list = base::one_of(known);
    object(column, "found " + shown(text) + ", which is no " + what + " of the plant" +
                       (list.empty() ? "; expected one that it has" : list));
}

void RowValidation::check_shift() {
    const auto& shifts = plant_.shifts;
    if (std::find(shifts.begin(), shifts.end(), row_.text(DocumentColumn::shift)) == shifts.end())
        object_to_name(DocumentColumn::shift, "shift", shifts);
}

const orders::OrderRecord* RowValidation::order() {
    const auto* order = book_.find_order(row_.text(DocumentColumn::order));
    if (order == nullptr) expect(DocumentColumn::order, "the number of an order that was taken");
    if (order == nullptr || order->bought_from.empty()) return order;
    object(DocumentColumn::order,
           fmt::format("found {}, whose board {} is bought from {}: sheets that are bought are not kept in the ledger; "
                       "leave the order's rows out",
                       shown(row_.text(DocumentColumn::order)), shown(order->board), order->bought_from));
    return nullptr;
}

const plant::Corrugator* RowValidation::corrugator() {
    const auto* found = find(plant_.corrugators, row_.text(DocumentColumn::corrugator));
    if (found == nullptr) object_to_name(DocumentColumn::corrugator, "corrugator", codes(plant_.corrugators));
    return found;
}

const plant::Converter* RowValidation::converter() {
    const auto* found = find(plant_.converters, row_.text(DocumentColumn::converter));
    if (found == nullptr) object_to_name(DocumentColumn::converter, "converter", codes(plant_.converters));
    return found;
}

const plant::Paper* RowValidation::paper(DocumentColumn column) {
    const auto* found = find(plant_.papers, row_.text(column));
    if (found == nullptr) object_to_name(column, "paper", codes(plant_.papers));
    return found;
}

const plant::Mill* RowValidation::mill() {
    std::vector<std::string> names;
    for (const auto& mill : plant_.mills) {
        if (mill.name == row_.text(DocumentColumn::mill)) return &mill;
        names.push_back(mill.name);
    }
    object_to_name(DocumentColumn::mill, "mill", names);
    return nullptr;
}

void RowValidation::check_grade() {
    if (is_grade(row_.text(DocumentColumn::grade))) return;
    const auto& grade = box_plant_grades().front();
    expect(DocumentColumn::grade,
           std::string("a grade as EN 643 writes it, such as ") + grade.code + " (" + grade.name + ")");
}

bool RowValidation::is_corrugator(const std::string& code) const {
    return find(plant_.corrugators, code) != nullptr;
}

bool RowValidation::is_machine(const std::string& code) const {
    return is_corrugator(code) || find(plant_.converters, code) != nullptr;
}

std::vector<std::string> RowValidation::machines() const {
    auto all = codes(plant_.corrugators);
    for (const auto& code : codes(plant_.converters)) all.push_back(code);
    return all;
}

bool RowValidation::is_light_enough(DocumentColumn column, double kg) {
    if (kg <= most_kg) return true;
    expect(column, "a row of less than a million tonnes");
    return false;
}

Money RowValidation::amount(DocumentColumn column, double quantity, double rate) {
    if (const auto money = Money::of(quantity, rate)) return *money;
    expect(column, "an amount that a ledger can keep");
    return {};
}

ledger::Draft RowValidation::draft() const {
    ledger::Draft draft;
    draft.kind = name_of(row_.kind);
    draft.ref = row_.text(DocumentColumn::ref);
    draft.content = row_.content;
    draft.date = row_.date;
    draft.shift = row_.text(DocumentColumn::shift);
    draft.note = row_.text(DocumentColumn::note);
    return draft;
}

std::string at_row(const std::string& file, std::int64_t line, std::string_view column, const std::string& text) {
    const auto where = line == 0 ? file : fmt::format("{}:{}", file, line);
    return column.empty() ? fmt::format("{}: {}", where, text) : fmt::format("{}: {}: {}", where, column, text);
}

void Refusals::add(const std::string& file, std::int64_t line, std::string_view column, const std::string& text) {
    if (++count_ <= most_listed) listed_.push_back(at_row(file, line, column, text));
}

void Refusals::throw_if_any() const {
    if (!any()) return;
    auto lines = listed_;
    if (count_ > listed_.size())
        lines.push_back(
            fmt::format("post: too many faults to list: found {} more than the {} above; "
                        "correct these and post again",
                        count_ - listed_.size(), listed_.size()));
    throw InputError(InputError::Whose::request, lines);
}

}  // namespace flutebook::production
