#include "host/production/accounts.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace flutebook::production {

AccountKind account_kind(std::string_view name) {
    static constexpr std::array<std::pair<std::string_view, AccountKind>, 10> named = {
        {{account::floor, AccountKind::floor},
         {account::loose_scrap, AccountKind::loose_scrap},
         {account::bale_yard, AccountKind::bale_yard},
         {account::paper_store, AccountKind::paper_store},
         {account::adhesive_store, AccountKind::adhesive_store},
         {account::finished, AccountKind::finished},
         {account::opening, AccountKind::opening},
         {account::costs, AccountKind::costs},
         {account::revenue, AccountKind::revenue},
         {account::unexplained, AccountKind::unexplained}}};
    if (name.starts_with(account::mill_prefix)) return AccountKind::mill;
    const auto* found = std::find_if(named.begin(), named.end(), [&](const auto& item) { return item.first == name; });
    return found == named.end() ? AccountKind::machine : found->second;
}

bool is_border(AccountKind kind) {
    switch (kind) {
        case AccountKind::machine:
        case AccountKind::floor:
        case AccountKind::loose_scrap:
        case AccountKind::bale_yard:
            return false;
        case AccountKind::paper_store:
        case AccountKind::adhesive_store:
        case AccountKind::finished:
        case AccountKind::opening:
        case AccountKind::costs:
        case AccountKind::revenue:
        case AccountKind::unexplained:
        case AccountKind::mill:
            return true;
    }
    return true;
}

}  // namespace flutebook::production
