#include "ledger/proof/totals_proof.hpp"

#include <fmt/format.h>

#include <limits>

#include "ledger/values/money.hpp"
#include "ledger/writing/chain.hpp"

namespace flutebook::ledger::proof {

namespace {

template <std::size_t Size>
std::string shown(const std::array<std::int64_t, Size>& key, const NameList& names) {
    std::string text = to_text(month_of(key[0]));
    for (std::size_t i = 1; i < Size; ++i)
        if (key[i] != 0) text += ", " + names.shown(key[i]);
    return text;
}

// `sql` answers with keys, then movements, grams and money, in any order.
template <std::size_t Size>
void compare(Statement rows, std::map<std::array<std::int64_t, Size>, RecountedSum> wanted, const NameList& names,
             Findings& findings) {
    while (rows.step()) {
        std::array<std::int64_t, Size> key{};
        int column = 0;
        for (auto& part : key) part = rows.number(column++);
        const RecountedSum found = {rows.number(column), rows.number(column + 1), rows.number(column + 2)};
        const auto sum = wanted.find(key);
        if (sum == wanted.end()) {
            findings.add(fmt::format("total of {}: exists, but no entry makes it", shown(key, names)));
            continue;
        }
        if (!(sum->second == found))
            findings.add(fmt::format("total of {}: is wrong: found {} g and {} of money, the entries make {} g and {}",
                                     shown(key, names), found.grams, Money::of_ten_thousandths(found.money).to_double(),
                                     sum->second.grams, Money::of_ten_thousandths(sum->second.money).to_double()));
        wanted.erase(sum);
    }
    for (const auto& [key, sum] : wanted)
        findings.add(fmt::format("total of {}: is missing: the entries make {} g", shown(key, names), sum.grams));
}

constexpr const char* flow_totals =
    "SELECT month, from_account, to_account, material, cause, movements, grams, money FROM month_flow "
    "WHERE month BETWEEN ?1 AND ?2";
constexpr const char* detail_totals =
    "SELECT month, centre, shift, board, from_account, to_account, cause, movements, grams, money FROM month_detail "
    "WHERE month BETWEEN ?1 AND ?2";
constexpr const char* expected_totals =
    "SELECT month, centre, shift, board, cause, losses, grams, 0 FROM month_expected WHERE month BETWEEN ?1 AND ?2";

struct MonthSpan {
    std::int64_t first, last;
};

Statement totals_in(Database& books, const char* sql, MonthSpan months) {
    Statement rows(books, sql);
    rows.bind(1, months.first).bind(2, months.last);
    return rows;
}

template <std::size_t Size>
std::map<std::array<std::int64_t, Size>, RecountedSum> only_in(
    const std::map<std::array<std::int64_t, Size>, RecountedSum>& sums, MonthSpan months) {
    std::map<std::array<std::int64_t, Size>, RecountedSum> kept;
    for (const auto& one : sums)
        if (one.first[0] >= months.first && one.first[0] <= months.last) kept.insert(kept.end(), one);
    return kept;
}

void prove_totals_in(Database& books, MonthSpan months, const NameList& names, const Recount& recount,
                     Findings& findings) {
    compare(totals_in(books, flow_totals, months), only_in(recount.flows, months), names, findings);
    compare(totals_in(books, detail_totals, months), only_in(recount.details, months), names, findings);
    compare(totals_in(books, expected_totals, months), only_in(recount.expected, months), names, findings);
}

}  // namespace

void prove_totals(Database& books, const NameList& names, const Recount& recount, Findings& findings) {
    constexpr MonthSpan all = {std::numeric_limits<std::int64_t>::min(), std::numeric_limits<std::int64_t>::max()};
    prove_totals_in(books, all, names, recount, findings);
}

void prove_totals_of(Database& books, std::int64_t month, const NameList& names, const Recount& recount,
                     Findings& findings) {
    prove_totals_in(books, {month, month}, names, recount, findings);
}

NameList::NameList(Database& books) {
    Statement rows(books, "SELECT id, text FROM name");
    while (rows.step()) names_.emplace(rows.number(0), rows.text(1));
}

const std::string* NameList::find(std::int64_t number) const {
    const auto found = names_.find(number);
    return found == names_.end() ? nullptr : &found->second;
}

std::string NameList::shown(std::int64_t number) const {
    const auto* name = find(number);
    return name == nullptr ? "?" : *name;
}

void RecountedSum::add(std::int64_t more_grams, std::int64_t more_money) {
    movements += 1;
    const bool is_mass_lost = __builtin_add_overflow(grams, more_grams, &grams);
    const bool is_money_lost = __builtin_add_overflow(money, more_money, &money);
    is_too_large = is_too_large || is_mass_lost || is_money_lost;
}

}  // namespace flutebook::ledger::proof
