#include "ledger/proof/seals_proof.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <tuple>

#include "ledger/writing/chain.hpp"
#include "ledger/writing/sealed_content.hpp"

namespace flutebook::ledger::proof {

namespace {

using Stocks = std::map<std::array<std::int64_t, 2>, RecountedSum>;  // account, material

// Closed months in their order, with the stocks that grew until then.
class SealsProof {
public:
    SealsProof(Database& books, const NameList& names, const ChainRead& chain, const QuotesRead& quotes,
               Findings& findings)
        : books_(books),
          names_(names),
          chain_(chain),
          quotes_(quotes),
          findings_(findings),
          flow_(chain.recount.flows.begin()) {}

    void prove() {
        for (const auto& closing : chain_.closings) prove_month(closing);
        Statement lone(books_,
                       "SELECT month FROM seal WHERE entry NOT IN (SELECT e.id FROM entry AS e JOIN name AS k "
                       "ON k.id = e.kind WHERE k.text = 'close') UNION "
                       "SELECT month FROM seal_stock WHERE month NOT IN (SELECT month FROM seal)");
        while (lone.step())
            findings_.add(fmt::format("{}: is sealed, but no entry closes it", to_text(month_of(lone.number(0)))));
    }

private:
    void prove_month(const Closing& closing) {
        const auto month = month_of(closing.month);
        grow_stocks(closing.month);
        const auto content = parse_sealed(closing.content);
        if (!content || content->month != month) {
            findings_.add_at(closing.entry, fmt::format("entry {}: closes {}, but does not say what it seals",
                                                        closing.entry, to_text(month)));
            return;
        }
        const auto stocks = stocks_now();
        const auto find = [&](const std::string& what) {
            findings_.add_at(closing.entry, fmt::format("entry {}: {}: {}", closing.entry, to_text(month), what));
        };
        if (!is_sealed_by(closing)) find("is closed by its entry, but not sealed");
        if (totals_hash(month, flows_of(closing.month), expected_of(closing.month)) != content->totals)
            find("does not hold what was sealed: its totals are others");
        if (stocks_hash(month, stocks) != content->stocks)
            find("does not hold what was sealed: its closing stocks are others");
        if (!equal(stocks, stored_stocks(closing.month)))
            find("its stored closing stocks are not what its entries make");
        if (!is_known(content->quotes, quotes_.quotes)) find("the saved quotes of that day are gone or were changed");
        if (!is_known(content->orders, quotes_.orders)) find("the orders of that day are gone or were changed");
        for (const auto& account : content->inner_accounts) {
            const auto held = mass_of(account, stocks);
            if (held < Grams{}) find(fmt::format("{} ended below zero: {} kg", account, held.to_kg()));
        }
    }

    void grow_stocks(std::int64_t month) {
        for (; flow_ != chain_.recount.flows.end() && flow_->first[0] <= month; ++flow_) {
            const auto& [key, sum] = *flow_;
            stocks_[{key[2], key[3]}].add(sum.grams, sum.money);
            stocks_[{key[1], key[3]}].add(-sum.grams, -sum.money);
        }
    }

    [[nodiscard]] std::vector<Balance> sorted(const Stocks& stocks) const {
        std::vector<Balance> balances;
        for (const auto& [key, sum] : stocks)
            if (sum.grams != 0 || sum.money != 0)
                balances.push_back({names_.shown(key[0]), names_.shown(key[1]), Grams::of(sum.grams),
                                    Money::of_ten_thousandths(sum.money)});
        std::sort(balances.begin(), balances.end(), [](const auto& left, const auto& right) {
            return std::tie(left.account, left.material) < std::tie(right.account, right.material);
        });
        return balances;
    }
    [[nodiscard]] std::vector<Balance> stocks_now() const { return sorted(stocks_); }
    [[nodiscard]] std::vector<Balance> stored_stocks(std::int64_t month) {
        Statement rows(books_, "SELECT account, material, grams, money FROM seal_stock WHERE month = ?");
        rows.bind(1, month);
        Stocks stored;
        while (rows.step()) stored[{rows.number(0), rows.number(1)}].add(rows.number(2), rows.number(3));
        return sorted(stored);
    }
    static bool equal(const std::vector<Balance>& left, const std::vector<Balance>& right) {
        return std::equal(left.begin(), left.end(), right.begin(), right.end(), [](const auto& one, const auto& other) {
            return one.account == other.account && one.material == other.material && one.mass == other.mass &&
                   one.money == other.money;
        });
    }
    static Grams mass_of(const std::string& account, const std::vector<Balance>& stocks) {
        Grams held;
        for (const auto& stock : stocks)
            if (stock.account == account) held += stock.mass;
        return held;
    }

    [[nodiscard]] std::vector<Flow> flows_of(std::int64_t month) const {
        std::vector<Flow> flows;
        const auto& all = chain_.recount.flows;
        for (auto one = all.lower_bound({month, 0, 0, 0, 0}); one != all.end() && one->first[0] == month; ++one) {
            const auto& [key, sum] = *one;
            flows.push_back({names_.shown(key[1]), names_.shown(key[2]), names_.shown(key[3]), names_.shown(key[4]),
                             sum.movements, Grams::of(sum.grams), Money::of_ten_thousandths(sum.money)});
        }
        std::sort(flows.begin(), flows.end(), [](const auto& left, const auto& right) {
            return std::tie(left.from, left.to, left.material, left.cause) <
                   std::tie(right.from, right.to, right.material, right.cause);
        });
        return flows;
    }
    [[nodiscard]] std::vector<ExpectedLoss> expected_of(std::int64_t month) const {
        std::map<std::pair<std::string, std::string>, std::int64_t> sums;
        const auto& all = chain_.recount.expected;
        for (auto one = all.lower_bound({month, 0, 0, 0, 0}); one != all.end() && one->first[0] == month; ++one)
            sums[{names_.shown(one->first[1]), names_.shown(one->first[4])}] += one->second.grams;
        std::vector<ExpectedLoss> losses;
        for (const auto& [key, grams] : sums) losses.push_back({key.first, key.second, Grams::of(grams)});
        return losses;
    }

    bool is_sealed_by(const Closing& closing) {
        Statement row(books_, "SELECT 1 FROM seal WHERE month = ? AND entry = ?");
        row.bind(1, closing.month).bind(2, closing.entry);
        return row.step();
    }
    static bool is_known(const Hash& head, const std::vector<Hash>& hashes) {
        return head == Hash{} || std::find(hashes.begin(), hashes.end(), head) != hashes.end();
    }

    Database& books_;
    const NameList& names_;
    const ChainRead& chain_;
    const QuotesRead& quotes_;
    Findings& findings_;
    std::map<std::array<std::int64_t, 5>, RecountedSum>::const_iterator flow_;
    Stocks stocks_;
};

}  // namespace

void prove_seals(Database& books, const NameList& names, const ChainRead& chain, const QuotesRead& quotes,
                 Findings& findings) {
    SealsProof(books, names, chain, quotes, findings).prove();
}

}  // namespace flutebook::ledger::proof
