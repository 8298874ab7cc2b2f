// Finds saved quotes, says what became of one, and shows where it stands among its request's revisions.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "host/answers/quote_list_answer.hpp"
#include "host/base/date.hpp"
#include "ledger/reading/quote_search.hpp"
#include "ledger/store/store.hpp"

namespace flutebook::saved_quotes {

/// A size, and how far each of its lengths may be from it, either way.
struct SizeSearch {
    std::vector<double> lengths_mm;  // two (the height is not asked for) or three
    double within_share = 0;         // of the length
    double within_mm = 0;
};

/// What is not given does not matter.
struct FindOptions {
    std::optional<std::string> customer;  // a part of the name
    std::optional<std::string> request, board, style;
    std::optional<SizeSearch> size;
    std::optional<base::Date> from, to;  // the day on which it was saved, UTC
    std::optional<std::string> state;    // won lost open
    std::optional<std::string> before;   // older than this quote
    std::size_t limit = 20;
};

/// Gives the quotes that an older version saved what they are found by; how many there were. Opens the ledger for
/// writing only where there are any. Throws LedgerError.
std::size_t record_older_quotes(const std::string& ledger_file, const std::string& who);

[[nodiscard]] answers::QuoteList find_quotes(const ledger::Store& store, const FindOptions& asked);

/// One of them. Throws LedgerError, refused, where there is no such quote.
[[nodiscard]] answers::ListedQuote listed_quote(const ledger::Store& store, const std::string& number);

/// Says what became of a quote: added to what was said before, on disk when it returns. A quote that is lost needs a
/// reason, since the reasons are what a plant learns from. Throws LedgerError, refused: no such quote, no reason.
answers::QuoteMark mark_quote(ledger::Store& store, const std::string& number, const std::string& state,
                              const std::string& why, const std::string& who);

}  // namespace flutebook::saved_quotes
