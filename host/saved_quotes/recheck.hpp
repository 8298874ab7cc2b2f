// A saved quote worked out again: what would be answered today, how it differs from what was answered, and whose doing
// that is. The quote itself stays as it was.
//
// It is worked out twice, by today's plugins both times: from the files that were kept, and from the plant's files of
// today. What the first differs from the saved answer in, the plugins or the program did; the rest, the files.
#pragma once

#include <chrono>
#include <optional>
#include <string>
#include <vector>

#include "host/answers/recheck_answer.hpp"
#include "host/quoting/quote.hpp"
#include "host/saved_quotes/changes.hpp"
#include "host/saved_quotes/saved_quote.hpp"
#include "ledger/reading/quotes.hpp"

namespace flutebook::saved_quotes {

struct RecheckOptions {
    std::string folder;  // the plant's, today
    std::string ledger;  // the file, which says today's share of trim
    unsigned threads = 1;
    /// The day whose prices today's files give; nothing: the quote's own.
    std::optional<base::Date> date = std::nullopt;
};

/// Throws InputError (plant) or ModelError where the plant of today is not fit, LedgerError where a part of the quote
/// is not there. To be called before any other file is opened for writing.
[[nodiscard]] answers::Recheck recheck(const ledger::SavedQuote& quote, const RecheckOptions& asked);

}  // namespace flutebook::saved_quotes
