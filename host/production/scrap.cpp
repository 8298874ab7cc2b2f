// Documents about scrap: weighed where it fell, which no count of sheets can tell; pressed to a bale and weighed; sent
// to a mill, by the weight of our scale and by the weight that the mill paid for. What the mill did not pay for, be it
// water or a difference of the scales, stays on the mill's account.
//
// Codes and names after EN 643:2014, seen in traders' lists and guides, not in the standard itself; 1.04.00 and
// 1.05.00 from memory.
#include "host/production/scrap.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <string_view>

#include "host/production/accounts.hpp"
#include "host/production/entry_from_row.hpp"

namespace flutebook::production {

namespace {

// Worked out of the runs. Weighed once more they would be lost twice.
constexpr std::array<std::string_view, 7> computed = {"side-trim", "order-change", "corrugator-run", "surplus",
                                                      "setup",     "rejects",      "cut-out"};
// What the month calls that which has no cause.
constexpr std::array<std::string_view, 3> reserved = {"unexplained", "idle", "corrections"};

template <std::size_t Count>
bool holds(const std::array<std::string_view, Count>& words, std::string_view word) {
    return std::find(words.begin(), words.end(), word) != words.end();
}

// Lower-case words joined by hyphens, in whatever alphabet: so that no cause is written in two ways.
bool is_cause(std::string_view word) {
    const auto fits = [](char sign) {
        return (sign >= 'a' && sign <= 'z') || (sign >= '0' && sign <= '9') || sign == '-' ||
               (static_cast<unsigned char>(sign) & 0x80U) != 0;
    };
    return word.front() != '-' && word.back() != '-' && std::all_of(word.begin(), word.end(), fits);
}

void check_cause(RowValidation& validation) {
    const auto& cause = validation.row().text(DocumentColumn::cause);
    if (holds(computed, cause))
        validation.expect(DocumentColumn::cause,
                          "a cause that is weighed, such as roll-ends, damage or returns: this "
                          "one is calculated from the runs");
    else if (holds(reserved, cause))
        validation.expect(DocumentColumn::cause, "another cause: the month uses this word for cost that has no cause");
    else if (!is_cause(cause))
        validation.expect(DocumentColumn::cause, "lower-case words joined by hyphens, such as roll-ends");
}

}  // namespace

RowResult weighed_scrap(RowValidation& validation) {
    const auto& row = validation.row();
    const auto& centre = row.text(DocumentColumn::centre);
    validation.check_shift();
    check_cause(validation);
    if (!validation.is_machine(centre) && centre != account::floor && centre != account::finished) {
        auto known = validation.machines();
        known.emplace_back(account::floor);
        known.emplace_back(account::finished);
        validation.object_to_name(DocumentColumn::centre, "machine, floor or finished goods", known);
    }
    if (!validation.passed()) return validation.objections();

    auto draft = validation.draft();
    draft.centre = centre;
    const auto* lost = validation.is_corrugator(centre) ? material::paper : material::board;
    add(draft, {centre,
                account::loose_scrap,
                lost,
                row.text(DocumentColumn::cause),
                to_grams(row.value(DocumentColumn::kg)),
                {}});
    return draft;
}

std::span<const std::string_view> causes_of_runs() {
    return computed;
}

bool is_of_run(std::string_view cause) {
    return holds(computed, cause);
}

bool is_grade(std::string_view code) {
    constexpr std::string_view shape = "g.dd.dd";
    if (code.size() != shape.size()) return false;
    for (std::size_t i = 0; i < shape.size(); ++i) {
        const char sign = code[i];
        const bool fits = shape[i] == '.'   ? sign == '.'
                          : shape[i] == 'g' ? sign >= '1' && sign <= '5'
                                            : sign >= '0' && sign <= '9';
        if (!fits) return false;
    }
    return true;
}

const std::vector<Grade>& box_plant_grades() {
    static const std::vector<Grade> grades = {
        {"4.01.00", "new shavings of corrugated board"},
        {"4.01.01", "unused corrugated kraft"},
        {"4.01.02", "unused corrugated material"},
        {"4.02.00", "used corrugated kraft 1"},
        {"4.03.00", "used corrugated kraft 2"},
        {"4.06.00", "used kraft"},
        {"4.07.00", "new kraft shavings"},
        {"4.08.00", "new carrier kraft"},
        {"1.04.00", "supermarket corrugated paper and board"},
        {"1.05.00", "corrugated paper and board packaging"},
    };
    return grades;
}

std::optional<std::string> grade_name(std::string_view code) {
    const auto& grades = box_plant_grades();
    const auto found =
        std::find_if(grades.begin(), grades.end(), [&](const Grade& grade) { return code == grade.code; });
    return found == grades.end() ? std::nullopt : std::optional<std::string>(found->name);
}

RowResult bale(RowValidation& validation) {
    const auto& row = validation.row();
    validation.check_shift();
    validation.check_grade();
    if (!validation.passed()) return validation.objections();

    auto draft = validation.draft();
    draft.centre = account::loose_scrap;
    const auto mass = to_grams(row.value(DocumentColumn::kg));
    add(draft, {account::loose_scrap, account::bale_yard, row.text(DocumentColumn::grade), "", mass, {}});
    return draft;
}

RowResult ticket(RowValidation& validation) {
    const auto& row = validation.row();
    validation.check_grade();
    const auto* mill = validation.mill();
    if (!validation.passed()) return validation.objections();
    const double weighed_kg = row.value(DocumentColumn::kg);
    // A load without a measured moisture is paid as it was weighed.
    const double paid = paid_kg(*mill, weighed_kg, row.number(DocumentColumn::moisture).value_or(0));
    const auto money = validation.amount(DocumentColumn::per_tonne, paid, row.value(DocumentColumn::per_tonne) / 1000);
    if (!validation.passed()) return validation.objections();

    auto draft = validation.draft();
    draft.centre = account::bale_yard;
    const auto& grade = row.text(DocumentColumn::grade);
    const auto at_mill = account::of_mill(mill->name);
    add(draft,
        {account::bale_yard, at_mill, grade, "", to_grams(row.number(DocumentColumn::sent).value_or(weighed_kg)), {}});
    add(draft, {at_mill, account::revenue, grade, "", to_grams(paid), money});
    return draft;
}

double paid_kg(const plant::Mill& mill, double kg, double moisture) {
    const double limit = mill.moisture_limit;
    if (moisture <= limit) return kg;
    if (mill.deduction == plant::Mill::Deduction::dry_matter) return kg * (1 - moisture) / (1 - limit);
    return kg * (1 - (moisture - limit));
}

}  // namespace flutebook::production
