// Undoing an entry, the use-case both faces call.
#pragma once

#include <cstdint>
#include <optional>
#include <string>

#include "host/answers/ledger_answer.hpp"
#include "ledger/store/store.hpp"
#include "ledger/values/entry.hpp"

namespace flutebook::services {

struct ReverseOptions {
    std::int64_t entry;
    std::string why, who;
    /// Left out: the entry's own day, or, where its month is closed, the first day that is open.
    std::optional<ledger::Date> date;
};

/// On disk when it returns. Throws LedgerError, refused: no such entry, reversed before, a reversal or a close itself,
/// a closed month, no reason given.
[[nodiscard]] answers::ReverseAnswer reverse(ledger::Store& store, const ReverseOptions& asked);

}  // namespace flutebook::services
