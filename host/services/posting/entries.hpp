// The entries of a month, one by one: for whoever looks for a row, or for what was saved.
#pragma once

#include "host/answers/ledger_answer.hpp"
#include "ledger/store/store.hpp"

namespace flutebook::services {

/// Entries that say what was saved (quotes and orders) move nothing and belong to no document.
enum class SavedEntries { leave_out, show };

/// Throws LedgerError: refused where a closed month is not what was sealed.
[[nodiscard]] answers::EntriesAnswer entries(const ledger::Store& store, ledger::Month month, SavedEntries saved);

}  // namespace flutebook::services
