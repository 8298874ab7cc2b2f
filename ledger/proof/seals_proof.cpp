#include "ledger/proof/seals_proof.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "ledger/proof/sealed_sums.hpp"
#include "ledger/writing/chain.hpp"
#include "ledger/writing/sealed_content.hpp"

namespace flutebook::ledger::proof {

namespace {

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
        const auto stocks = sorted_stocks(stocks_, names_);
        const auto find = [&](const std::string& what) {
            findings_.add_at(closing.entry, fmt::format("entry {}: {}: {}", closing.entry, to_text(month), what));
        };
        if (!is_sealed_by(closing)) find("is closed by its entry, but not sealed");
        const auto& recount = chain_.recount;
        if (totals_hash(month, sealed_flows(recount, names_, closing.month),
                        sealed_expected(recount, names_, closing.month)) != content->totals)
            find("differs from its seal: it has other totals");
        if (stocks_hash(month, stocks) != content->stocks) find("differs from its seal: it has other closing stocks");
        if (!are_equal(stocks, sorted_stocks(stored_stocks(books_, closing.month), names_)))
            find("its stored closing stocks are not what its entries make");
        if (!is_known(content->quotes, quotes_.quotes)) find("the saved quotes of that day are gone or were changed");
        if (!is_known(content->orders, quotes_.orders)) find("the orders of that day are gone or were changed");
        for (const auto& account : content->inner_accounts) {
            const auto held = mass_of(account, stocks);
            if (held < Grams{}) find(fmt::format("{} ended below zero: {} kg", account, held.to_kg()));
        }
    }

    void grow_stocks(std::int64_t month) {
        for (; flow_ != chain_.recount.flows.end() && flow_->first[0] <= month;
             flow_ = chain_.recount.flows.lower_bound({flow_->first[0] + 1, 0, 0, 0, 0}))
            add_flows(stocks_, chain_.recount, flow_->first[0]);
    }

    static Grams mass_of(const std::string& account, const std::vector<Balance>& stocks) {
        Grams held;
        for (const auto& stock : stocks)
            if (stock.account == account) held += stock.mass;
        return held;
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
    StockSums stocks_;
};

}  // namespace

void prove_seals(Database& books, const NameList& names, const ChainRead& chain, const QuotesRead& quotes,
                 Findings& findings) {
    SealsProof(books, names, chain, quotes, findings).prove();
}

}  // namespace flutebook::ledger::proof
