// Undoing an entry, the use-case both faces call.
#pragma once

#include <cstdint>
#include <optional>
#include <string>

#include "host/month_answers/ledger_answer.hpp"
#include "ledger/store/store.hpp"
#include "ledger/values/entry.hpp"

namespace flutebook::services {

struct ReverseOptions {
    std::int64_t entry;
    std::string why, who;
    /// Left out: the entry's own day, or, where its month is closed, the first day that is open.
    std::optional<ledger::Date> date;
};

/// The number of the entry that `text` names: a number, the ref of a document, or KIND:REF where documents of several
/// kinds have the ref. Throws LedgerError, refused, where there is none or more than one.
[[nodiscard]] std::int64_t entry_number(const ledger::Store& store, const std::string& text);

/// On disk when it returns. Throws LedgerError, refused: no such entry, reversed before, a reversal or a close itself,
/// a closed month, no reason given.
[[nodiscard]] answers::ReverseAnswer reverse(ledger::Store& store, const ReverseOptions& asked);

}  // namespace flutebook::services
