// Records: what is said of a saved quote after its parts, never changed: what it is found by, and what became of it.
//
// A record has a kind and attributes. Of an attribute that several records say, the newest counts; the others are its
// history. Records are a chain of their own, and their head stands in the chain of entries, as that of the quotes does.
#pragma once

#include <chrono>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "ledger/reading/quotes.hpp"
#include "ledger/store/store.hpp"

namespace flutebook::ledger {

/// The kind of the record that says what a quote is found by; a quote has one, or none where an older version saved it.
inline constexpr const char* found_by_kind = "found-by";

struct QuoteRecordDraft {
    std::string kind;
    std::vector<QuoteAttribute> attributes;
};

struct QuoteRecord {
    std::int64_t number;
    std::string kind;
    std::vector<QuoteAttribute> attributes;
    std::string who;
    std::chrono::sys_seconds when;
};

struct RecordOfQuote {
    std::string quote;  // Q000001
    QuoteRecordDraft record;
};

/// Adds all in one act, or none; on disk when it returns. Throws LedgerError, refused: there is no such quote, a record
/// has no attribute, two of one name, or what is no plain text.
void add_records(Store& store, std::span<const RecordOfQuote> records, const std::string& who);

/// Of one quote, oldest first; none where there is no such quote.
[[nodiscard]] std::vector<QuoteRecord> records_of(const Store& store, const std::string& quote);

/// The numbers of the quotes that have no record of a kind, oldest first.
[[nodiscard]] std::vector<std::string> quotes_without(const Store& store, const std::string& kind);

/// Whether a text can be an attribute's: plain, and not too long.
[[nodiscard]] bool can_be_attribute(const std::string& text);

}  // namespace flutebook::ledger
