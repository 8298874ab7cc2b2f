// A saved quote for a page: its document, and its blanks drawn again from what was kept with it.
#pragma once

#include <string>

#include "host/answers/quote_json.hpp"
#include "ledger/reading/quotes.hpp"

namespace flutebook::saved_quotes {

/// The document of a saved quote with its blanks as the kept plant, request and style draw them, whatever the plant's
/// files say today, and with those files; `folder` is where the plant is today. A quote that kept no style, or whose
/// files this program no longer reads, has no blanks, and `not_drawn` of its answer says why. Throws LedgerError,
/// unfit, where a part of the quote is not there or cannot be read.
[[nodiscard]] answers::QuoteDocument drawn_document(const ledger::SavedQuote& quote, const std::string& folder);

}  // namespace flutebook::saved_quotes
