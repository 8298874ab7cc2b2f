// Undoing an entry, the use-case both faces call.
#pragma once

#include <cstdint>
#include <optional>
#include <string>

#include "ledger/store/store.hpp"
#include "ledger/values/entry.hpp"

namespace flutebook::services {

struct ReverseOptions {
    std::int64_t entry;
    std::string why, who;
    /// Left out: the entry's own day, or, where its month is closed, the first day that is open.
    std::optional<ledger::Date> date;
};

struct ReverseAnswer {
    ledger::Entry reversal;
    std::string reversed_kind, reversed_ref;  // of the document that was undone
};

/// On disk when it returns. Throws LedgerError, refused: no such entry, reversed before, a reversal or a close itself,
/// a closed month, no reason given.
[[nodiscard]] ReverseAnswer reverse(ledger::Store& store, const ReverseOptions& asked);

}  // namespace flutebook::services
