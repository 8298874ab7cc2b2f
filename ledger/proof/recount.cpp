#include "ledger/proof/recount.hpp"

namespace flutebook::ledger::proof {

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
