#include "host/desk/order.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

#include "host/desk/saved_quote.hpp"
#include "host/review/documents/form.hpp"
#include "host/review/order_record_json.hpp"
#include "ledger/quotes.hpp"

namespace flutebook::desk {

namespace {

review::OrderRecord terms_in(const ledger::Store& store, const ledger::SavedQuote& quote, double quantity) {
    std::vector<std::string> held;
    for (const ledger::Part& part : quote.parts)
        if (const auto terms =
                part.name.rfind("terms/", 0) == 0 ? review::order_record_of(part.content) : std::nullopt) {
            if (terms->quantity == quantity) return *terms;
            held.push_back(fmt::format("{:.0f}", terms->quantity));
        }
    throw LedgerError(
        LedgerError::Kind::refused,
        fmt::format("{}: quote {} does not hold this quantity: found {}; take one of {}, or quote it anew",
                    store.file(), quote.number, quantity, fmt::join(held, ", ")));
}

// An order is only good for what can be posted to it.
void expect_postable(const ledger::Store& store, const std::string& number) {
    const bool is_stripped = number.front() != ' ' && number.back() != ' ';
    if (is_stripped && number.size() <= review::longest_name) return;
    throw LedgerError(
        LedgerError::Kind::refused,
        fmt::format("{}: the order's number is none that a document can name: found '{}'; give at most {} "
                    "bytes, no space at either end",
                    store.file(), number, review::longest_name));
}

}  // namespace

review::OrderRecord take_order(ledger::Store& store, const OrderAsked& asked) {
    const ledger::SavedQuote quote = saved_quote(store, asked.quote);
    review::OrderRecord made = terms_in(store, quote, asked.quantity);
    made.quote = quote.number;
    made.number = asked.number.empty() ? fmt::format("{}-{:.0f}", quote.number, made.quantity) : asked.number;
    expect_postable(store, made.number);
    ledger::take_order(store,
                       {made.number,
                        made.quote,
                        static_cast<std::int64_t>(made.quantity),
                        {{review::order_record_part, review::to_json(made)}}},
                       asked.who);
    return made;
}

}  // namespace flutebook::desk
