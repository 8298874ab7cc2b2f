// A new request from a saved quote: what was asked for then, under a number and a day of its own, linked to the quote
// by its key `copied_from`.
#pragma once

#include <optional>
#include <string>

#include "host/base/date.hpp"
#include "ledger/reading/quotes.hpp"
#include "ledger/store/store.hpp"

namespace flutebook::saved_quotes {

struct CopyOptions {
    std::optional<std::string> number;  // else the first of NUMBER-2, NUMBER-3 … that no saved quote has
    base::Date date;                    // whose prices the new request asks for
};

struct CopiedRequest {
    std::string number;  // of the request
    std::string text;    // of its file
};

/// Values are as they were written; notes are left behind, since they tell of the old request. Throws LedgerError where
/// the quote's request cannot be read.
[[nodiscard]] CopiedRequest copy_request(const ledger::Store& store, const ledger::SavedQuote& quote,
                                         const CopyOptions& asked);

}  // namespace flutebook::saved_quotes
