#include "ledger/proof/saved_proof.hpp"

#include <fmt/format.h>

#include <string>

#include "ledger/writing/saved_entry.hpp"

namespace flutebook::ledger::proof {

namespace {

// Whether the chain was so long, and ended so, at some time.
bool holds(const std::vector<Hash>& chain, std::int64_t number, const Hash& head) {
    if (number == 0) return head == Hash{};
    return number <= static_cast<std::int64_t>(chain.size()) && number > 0 &&
           chain[static_cast<std::size_t>(number) - 1] == head;
}

SavedHeads heads_of(const QuotesRead& quotes) {
    SavedHeads heads{
        static_cast<std::int64_t>(quotes.quotes.size()), static_cast<std::int64_t>(quotes.orders.size()), {}, {}};
    if (!quotes.quotes.empty()) heads.quotes_head = quotes.quotes.back();
    if (!quotes.orders.empty()) heads.orders_head = quotes.orders.back();
    heads.records = static_cast<std::int64_t>(quotes.records.size());
    if (!quotes.records.empty()) heads.records_head = quotes.records.back();
    return heads;
}

void prove_receipts(const ChainRead& chain, const QuotesRead& quotes, Findings& findings) {
    for (const auto& saved : chain.saved) {
        const auto find = [&](const std::string& what) {
            findings.add_at(saved.entry, fmt::format("entry {}: {}", saved.entry, what));
        };
        const auto heads = parse_saved(saved.content);
        if (!heads) {
            find("does not say what was saved");
            continue;
        }
        if (!holds(quotes.quotes, heads->quotes, heads->quotes_head))
            find(fmt::format("the {} quotes that were saved then are gone or were changed", heads->quotes));
        if (!holds(quotes.orders, heads->orders, heads->orders_head))
            find(fmt::format("the {} orders that were taken then are gone or were changed", heads->orders));
        if (!holds(quotes.records, heads->records, heads->records_head))
            find(fmt::format("the {} records of quotes that were kept then are gone or were changed", heads->records));
    }
    // A ledger of an older version has no such entry before its first write.
    const auto newest = chain.saved.empty() ? std::nullopt : parse_saved(chain.saved.back().content);
    if (newest && !(*newest == heads_of(quotes)))
        findings.add(
            "saved quotes and orders: the newest entry that says what was saved does not know the last of them");
}

// Documents name only orders that were taken, so where anything was ever saved, each order must be there.
void prove_orders_there(Database& books, const NameList& names, Findings& findings) {
    Statement lone(books,
                   "SELECT e.order_, min(e.id), count(*) FROM entry AS e JOIN name AS n ON n.id = e.order_ "
                   "WHERE e.order_ <> 0 AND n.text NOT IN (SELECT number FROM taken_order) GROUP BY e.order_ "
                   "ORDER BY min(e.id)");
    while (lone.step())
        findings.add_at(lone.number(1),
                        fmt::format("entry {}: names order {}, which is not there; so do {} entries in all",
                                    lone.number(1), names.shown(lone.number(0)), lone.number(2)));
}

}  // namespace

void prove_saved(Database& books, const NameList& names, const ChainRead& chain, const QuotesRead& quotes,
                 Findings& findings) {
    prove_receipts(chain, quotes, findings);
    if (!chain.saved.empty() || !quotes.quotes.empty()) prove_orders_there(books, names, findings);
}

}  // namespace flutebook::ledger::proof
