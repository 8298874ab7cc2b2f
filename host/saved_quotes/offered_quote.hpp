// A saved quote for an offer: the plant and the request as they were kept, the answer as it was given.
#pragma once

#include <string>

#include "host/answers/quote_answer.hpp"
#include "ledger/reading/quotes.hpp"

namespace flutebook::saved_quotes {

/// `answer.request` refers to `plant`.
struct OfferedQuote {
    plant::Plant plant;
    answers::RequestAnswer answer;  // with its blanks drawn
};

/// `folder` is where the plant is today. Throws InputError where this program no longer reads what was kept, and
/// LedgerError, unfit, where a part of the quote is not there.
[[nodiscard]] OfferedQuote offered_quote(const ledger::SavedQuote& quote, const std::string& folder);

}  // namespace flutebook::saved_quotes
