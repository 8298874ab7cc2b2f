// Scrap that was weighed where it fell: what no count of sheets can tell.
#include <algorithm>
#include <array>
#include <string_view>

#include "host/production/accounts.hpp"
#include "host/production/grams.hpp"
#include "host/production/kinds.hpp"

namespace flutebook::production {

namespace {

// Worked out of the runs. Weighed once more they would be lost twice.
constexpr std::array<std::string_view, 7> computed = {"side-trim", "order-change", "corrugator-run", "surplus",
                                                      "setup",     "rejects",      "cut-out"};
// What the month calls that which has no cause.
constexpr std::array<std::string_view, 2> reserved = {"unexplained", "idle"};

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

void check_cause(RowValidation& examination) {
    const auto& cause = examination.row().text(DocumentColumn::cause);
    if (holds(computed, cause))
        examination.expect(DocumentColumn::cause,
                           "a cause that runs do not tell, such as roll-ends, damage or returns: this "
                           "one is worked out of the runs");
    else if (holds(reserved, cause))
        examination.expect(DocumentColumn::cause, "a cause: this word is what the month calls that which has none");
    else if (!is_cause(cause))
        examination.expect(DocumentColumn::cause, "lower-case words joined by hyphens, such as roll-ends");
}

}  // namespace

Worth weighed_scrap(RowValidation& examination) {
    const auto& row = examination.row();
    const auto& centre = row.text(DocumentColumn::centre);
    examination.check_shift();
    check_cause(examination);
    if (!examination.is_machine(centre) && centre != account::floor && centre != account::finished) {
        auto known = examination.machines();
        known.emplace_back(account::floor);
        known.emplace_back(account::finished);
        examination.object_to_name(DocumentColumn::centre, "machine, floor or finished goods", known);
    }
    if (!examination.passed()) return examination.objections();

    auto draft = examination.draft();
    draft.centre = centre;
    const auto* lost = examination.is_corrugator(centre) ? material::paper : material::board;
    add(draft, {centre,
                account::loose_scrap,
                lost,
                row.text(DocumentColumn::cause),
                to_grams(row.value(DocumentColumn::kg)),
                {}});
    return draft;
}

}  // namespace flutebook::production
