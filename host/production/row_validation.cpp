#include "host/production/row_validation.hpp"

#include <algorithm>

#include "host/base/near_spellings.hpp"
#include "host/base/quoted_text.hpp"
#include "host/production/grade.hpp"
#include "host/production/grams.hpp"

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

void Examination::expect(Column column, const std::string& expected) {
    const auto& text = row_.text(column);
    object(column, "found " + (text.empty() ? std::string("nothing") : shown(text)) + "; expected " + expected);
}

void Examination::object_to_name(Column column, const std::string& what, const std::vector<std::string>& known) {
    const auto& text = row_.text(column);
    const auto hint = base::did_you_mean(text, known);
    const auto advice = hint.empty() ? "; expected one that it has" : hint;
    object(column, "found " + shown(text) + ", which is no " + what + " of the plant" + advice);
}

void Examination::check_shift() {
    const auto& shifts = plant_.shifts;
    if (std::find(shifts.begin(), shifts.end(), row_.text(Column::shift)) == shifts.end())
        object_to_name(Column::shift, "shift", shifts);
}

const orders::OrderRecord* Examination::order() {
    const auto* order = book_.find_order(row_.text(Column::order));
    if (order == nullptr) expect(Column::order, "the number of an order that was taken");
    return order;
}

const plant::Corrugator* Examination::corrugator() {
    const auto* found = find(plant_.corrugators, row_.text(Column::corrugator));
    if (found == nullptr) object_to_name(Column::corrugator, "corrugator", codes(plant_.corrugators));
    return found;
}

const plant::Converter* Examination::converter() {
    const auto* found = find(plant_.converters, row_.text(Column::converter));
    if (found == nullptr) object_to_name(Column::converter, "converter", codes(plant_.converters));
    return found;
}

const plant::Paper* Examination::paper(Column column) {
    const auto* found = find(plant_.papers, row_.text(column));
    if (found == nullptr) object_to_name(column, "paper", codes(plant_.papers));
    return found;
}

const plant::Mill* Examination::mill() {
    std::vector<std::string> names;
    for (const auto& mill : plant_.mills) {
        if (mill.name == row_.text(Column::mill)) return &mill;
        names.push_back(mill.name);
    }
    object_to_name(Column::mill, "mill", names);
    return nullptr;
}

void Examination::check_grade() {
    if (is_grade(row_.text(Column::grade))) return;
    const auto& grade = box_plant_grades().front();
    expect(Column::grade, std::string("a grade as EN 643 writes it, such as ") + grade.code + " (" + grade.name + ")");
}

bool Examination::is_corrugator(const std::string& code) const {
    return find(plant_.corrugators, code) != nullptr;
}

bool Examination::is_machine(const std::string& code) const {
    return is_corrugator(code) || find(plant_.converters, code) != nullptr;
}

std::vector<std::string> Examination::machines() const {
    auto all = codes(plant_.corrugators);
    for (const auto& code : codes(plant_.converters)) all.push_back(code);
    return all;
}

bool Examination::is_light_enough(Column column, double kg) {
    if (kg <= most_kg) return true;
    expect(column, "a row of less than a million tonnes");
    return false;
}

Money Examination::amount(Column column, double quantity, double rate) {
    if (const auto money = Money::of(quantity, rate)) return *money;
    expect(column, "an amount that a ledger can keep");
    return {};
}

ledger::Draft Examination::draft() const {
    ledger::Draft draft;
    draft.kind = name_of(row_.kind);
    draft.ref = row_.text(Column::ref);
    draft.content = row_.content;
    draft.date = row_.date;
    draft.shift = row_.text(Column::shift);
    draft.note = row_.text(Column::note);
    return draft;
}

}  // namespace flutebook::production
