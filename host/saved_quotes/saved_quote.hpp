// Quotes that are kept: saved with everything they were worked out from, and always shown as they were.
//
// The parts of a saved quote, by name:
//   asked.json              how it was asked for: {"plant": the folder as it was named, "request": the file as it was
//                           named, "date": the day whose prices it has, "explain": a line or null}; quotes that were
//                           saved before this part was kept have none, and were asked for by the request alone
//   request.yaml            the request's file
//   plant/plant.yaml …      the plant's files: six, and styles.yaml where it has one
//   style.yaml              the style of the box, with what it is like, wherever it came from; quotes of earlier
//   releases
//                           and those of an outline have none
//   plugins.json            [{"id", "version", "file", "sha256"}...]
//   answer.json             the answer's document: see answers/quote_json
//   answer.txt              of quotes that the release 1.0.0 saved: the page, since their document lacks its words
//   terms/QUANTITY.json     for each quantity that could be made, the record that an order of it starts from; of a set
//                           terms/SETS/PIECE.json for each of its pieces
#pragma once

#include <optional>
#include <string>

#include "host/answers/quote_json.hpp"
#include "host/base/date.hpp"
#include "host/quoting/quote.hpp"
#include "host/workplace/workplace.hpp"
#include "ledger/reading/quotes.hpp"

namespace flutebook::saved_quotes {

/// A request's answer to what was asked.
struct QuoteToSave {
    const answers::RequestAnswer& answer;
    const answers::QuoteOptions& asked;
};

/// How a saved quote was asked for.
struct SavedOptions {
    std::string plant, request;          // the folder and the file, as they were named
    std::optional<base::Date> date;      // whose prices it has; nothing where the request's own says it
    std::optional<std::string> explain;  // a line
};

/// Whether an answer holds anything that can be kept: at least one quantity, and no model at fault.
[[nodiscard]] bool can_be_saved(const answers::RequestAnswer& answer);

/// The document of a saved quote. Throws LedgerError, unfit, where it cannot be read or is of an unknown version.
[[nodiscard]] answers::QuoteDocument saved_document(const ledger::SavedQuote& quote);

/// Saves one quote, with the very files that it was worked out from, and answers with its number. The same request with
/// the same answer, byte by byte, keeps the number that it has. Throws LedgerError.
[[nodiscard]] std::string save_quote(ledger::Store& store, const workplace::Workplace& workplace,
                                     const QuoteToSave& quote, const std::string& who);

/// The part of a saved quote; throws LedgerError, unfit, where it is not there.
[[nodiscard]] const std::string& part_of(const ledger::SavedQuote& quote, const std::string& name);

/// The same; null where it is not there.
[[nodiscard]] const std::string* find_part(const ledger::SavedQuote& quote, const std::string& name);

/// The name of the part that holds the style.
inline constexpr const char* style_part = "style.yaml";

/// Throws LedgerError, unfit, where that part is no longer what was kept.
[[nodiscard]] SavedOptions saved_options(const ledger::SavedQuote& quote);

/// Throws LedgerError, refused, where there is no such quote.
[[nodiscard]] ledger::SavedQuote saved_quote(const ledger::Store& store, const std::string& number);

/// The name of the part that holds these terms.
[[nodiscard]] std::string terms_part(const orders::OrderRecord& terms);

}  // namespace flutebook::saved_quotes
