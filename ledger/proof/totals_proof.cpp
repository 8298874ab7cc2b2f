#include "ledger/proof/totals_proof.hpp"

#include <fmt/format.h>

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
            findings.add(fmt::format("total of {}: stands there, but no entry makes it", shown(key, names)));
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

}  // namespace

void prove_totals(Database& books, const NameList& names, const Recount& recount, Findings& findings) {
    compare(Statement(books,
                      "SELECT month, from_account, to_account, material, cause, movements, grams, money "
                      "FROM month_flow"),
            recount.flows, names, findings);
    compare(Statement(books,
                      "SELECT month, centre, shift, board, from_account, to_account, cause, movements, grams, money "
                      "FROM month_detail"),
            recount.details, names, findings);
    compare(Statement(books, "SELECT month, centre, shift, board, cause, losses, grams, 0 FROM month_expected"),
            recount.expected, names, findings);
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
