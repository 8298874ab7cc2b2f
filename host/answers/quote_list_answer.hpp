// The answer of a search for saved quotes: request, price and state of each. Plain values, and the document that `quote
// list --json` writes.
#pragma once

#include <chrono>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "ledger/values/money.hpp"

namespace flutebook::answers {

/// What somebody said of a quote after it was sent.
struct QuoteMark {
    std::string state;  // won lost open
    std::string why;    // may be empty
    std::string who;
    std::chrono::sys_seconds when;
};

/// A quote among others, without its figures.
struct ListedQuote {
    struct Size {
        double length_mm, width_mm, height_mm;  // inside; of a drawing its blank, height 0
    };
    std::string number, request, who;
    std::chrono::sys_seconds when;
    std::int64_t revision;                // of its request, 1 the first
    std::optional<std::string> previous;  // the quote that was the revision before it
    std::optional<std::string> copied_from;
    std::string customer, style, board;  // empty where nobody knows
    std::optional<Size> size;
    std::vector<double> quantities;
    std::optional<Money> first_price, last_price;  // per thousand at the first and the last quantity
    std::string currency;
    int currency_minor_units;
    std::string state;             // the newest mark's, else open
    std::vector<QuoteMark> marks;  // oldest first
};

/// Newest first.
struct QuoteList {
    std::vector<ListedQuote> quotes;
    bool has_more = false;  // older ones, left out for the limit
};

/// {"quotes": [{"saved" (its number), "day" (UTC), "who", "customer", "request", "revision" (1 the first), "previous"
///   (the revision before it, or null), "copied_from" (a quote or null), "style", "size_mm": [L, W, H] (inside; of a
///   drawing its blank; null where unknown), "board", "quantities": [...], "price_first", "price_last" (per thousand at
///   the first and last quantity; null where it cannot be made), "currency", "state" (won lost open),
///   "marks": [{"state", "why", "who", "when" (UTC)}...], oldest first}...], newest first,
///  "before" (where older ones were left out, the number to ask them by with --before; else null)}
[[nodiscard]] std::string quote_list_document(const QuoteList& list);

/// {"saved", "state", "why", "who", "head" (of the ledger)}
[[nodiscard]] std::string mark_document(const std::string& number, const QuoteMark& mark, const std::string& head);

/// A request that was written from a saved quote.
struct QuoteCopy {
    std::string quote, request;  // their numbers
    std::string file;            // empty: none
    std::string text;
};

/// {"request" (its number), "copied_from" (the quote's), "file" (null where none was asked for), "text"}
[[nodiscard]] std::string copy_document(const QuoteCopy& copy);

}  // namespace flutebook::answers
