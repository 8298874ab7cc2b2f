#include "ledger/proof/sealed_sums.hpp"

#include <algorithm>
#include <string>
#include <tuple>
#include <utility>

namespace flutebook::ledger::proof {

void add_flows(StockSums& stocks, const Recount& recount, std::int64_t month) {
    const auto& all = recount.flows;
    for (auto one = all.lower_bound({month, 0, 0, 0, 0}); one != all.end() && one->first[0] == month; ++one) {
        const auto& [key, sum] = *one;
        stocks[{key[2], key[3]}].add(sum.grams, sum.money);
        stocks[{key[1], key[3]}].add(-sum.grams, -sum.money);
    }
}

StockSums stored_stocks(Database& books, std::int64_t month) {
    Statement rows(books, "SELECT account, material, grams, money FROM seal_stock WHERE month = ?");
    rows.bind(1, month);
    StockSums stored;
    while (rows.step()) stored[{rows.number(0), rows.number(1)}].add(rows.number(2), rows.number(3));
    return stored;
}

std::vector<Balance> sorted_stocks(const StockSums& stocks, const NameList& names) {
    std::vector<Balance> balances;
    for (const auto& [key, sum] : stocks)
        if (sum.grams != 0 || sum.money != 0)
            balances.push_back(
                {names.shown(key[0]), names.shown(key[1]), Grams::of(sum.grams), Money::of_ten_thousandths(sum.money)});
    std::sort(balances.begin(), balances.end(), [](const auto& left, const auto& right) {
        return std::tie(left.account, left.material) < std::tie(right.account, right.material);
    });
    return balances;
}

bool are_equal(const std::vector<Balance>& left, const std::vector<Balance>& right) {
    return std::equal(left.begin(), left.end(), right.begin(), right.end(), [](const auto& one, const auto& other) {
        return one.account == other.account && one.material == other.material && one.mass == other.mass &&
               one.money == other.money;
    });
}

std::vector<Flow> sealed_flows(const Recount& recount, const NameList& names, std::int64_t month) {
    std::vector<Flow> flows;
    const auto& all = recount.flows;
    for (auto one = all.lower_bound({month, 0, 0, 0, 0}); one != all.end() && one->first[0] == month; ++one) {
        const auto& [key, sum] = *one;
        flows.push_back({names.shown(key[1]), names.shown(key[2]), names.shown(key[3]), names.shown(key[4]),
                         sum.movements, Grams::of(sum.grams), Money::of_ten_thousandths(sum.money)});
    }
    std::sort(flows.begin(), flows.end(), [](const auto& left, const auto& right) {
        return std::tie(left.from, left.to, left.material, left.cause) <
               std::tie(right.from, right.to, right.material, right.cause);
    });
    return flows;
}

std::vector<ExpectedLoss> sealed_expected(const Recount& recount, const NameList& names, std::int64_t month) {
    std::map<std::pair<std::string, std::string>, std::int64_t> sums;
    const auto& all = recount.expected;
    for (auto one = all.lower_bound({month, 0, 0, 0, 0}); one != all.end() && one->first[0] == month; ++one)
        sums[{names.shown(one->first[1]), names.shown(one->first[4])}] += one->second.grams;
    std::vector<ExpectedLoss> losses;
    for (const auto& [key, grams] : sums) losses.push_back({key.first, key.second, Grams::of(grams)});
    return losses;
}

}  // namespace flutebook::ledger::proof
