// Finds saved quotes by the attributes of their records, newest first.
#pragma once

#include <chrono>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "ledger/reading/records.hpp"
#include "ledger/values/entry.hpp"

namespace flutebook::ledger {

/// The quote has this attribute with this text.
struct AttributeIs {
    std::string name, text;
};
/// The quote has this attribute, and its text holds `part`; small and large letters of ASCII are the same.
struct AttributeHolds {
    std::string name, part;
};
/// The quote has this attribute with a number of this span.
struct AttributeWithin {
    std::string name;
    std::int64_t low, high;
};
/// The newest text that was said of the quote under this name; `text` also where nothing was said, if `if_unsaid` is
/// so.
struct NewestIs {
    enum class IfUnsaid { matches, differs };
    std::string name, text;
    IfUnsaid if_unsaid;
};
/// The quote's request has this number.
struct RequestIs {
    std::string request;
};
/// Saved from the first second to the last of these days, UTC.
struct SavedBetween {
    std::optional<Date> from, to;
};
using QuoteCondition = std::variant<RequestIs, AttributeIs, AttributeHolds, AttributeWithin, NewestIs, SavedBetween>;

struct QuoteSearch {
    std::vector<QuoteCondition> conditions;  // all of them hold
    std::optional<std::string> before = {};  // quotes older than this one
    std::size_t limit = 20;
};

struct FoundQuote {
    std::string number, request, who;
    std::chrono::sys_seconds when;
    std::int64_t revision;                // 1: the first quote of its request
    std::optional<std::string> previous;  // the revision before it
    std::vector<QuoteRecord> records;     // oldest first

    /// The newest that was said under the name; null where nothing was.
    [[nodiscard]] const QuoteAttribute* find(const std::string& name) const;
    /// Empty where it was not said, or is no text.
    [[nodiscard]] std::string text(const std::string& name) const;
    [[nodiscard]] std::optional<std::int64_t> number_of(const std::string& name) const;
};

struct FoundQuotes {
    std::vector<FoundQuote> quotes;  // newest first
    bool has_more;                   // older ones that were not asked for
};

/// Of a hundred thousand quotes within a fraction of a second, whatever is looked for. Throws LedgerError, refused,
/// where `before` is no number of a quote.
[[nodiscard]] FoundQuotes find_quotes(const Store& store, const QuoteSearch& search);

/// One quote by its number, without its parts.
[[nodiscard]] std::optional<FoundQuote> find_quote_records(const Store& store, const std::string& number);

}  // namespace flutebook::ledger
