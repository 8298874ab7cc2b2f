// Lists the entries of a month.
#pragma once

#include <cstdint>
#include <optional>

#include "host/month_answers/entry_answer.hpp"
#include "host/month_answers/ledger_answer.hpp"
#include "ledger/store/store.hpp"

namespace flutebook::services {

/// Entries that say what was saved (quotes and orders) move nothing and belong to no document.
enum class SavedEntries { leave_out, show };

/// Throws LedgerError: refused where a closed month is not what was sealed.
[[nodiscard]] answers::EntriesAnswer entries(const ledger::Store& store, ledger::Month month, SavedEntries saved);

/// A page of a month's entries, at most as many as `search` says. Throws as entries().
[[nodiscard]] answers::EntryList entry_list(const ledger::Store& store, const ledger::EntrySearch& search);

/// One entry with all that it moved; nothing where there is none of this number. Throws LedgerError.
[[nodiscard]] std::optional<answers::EntryAnswer> entry(const ledger::Store& store, const std::string& currency,
                                                        std::int64_t number);

}  // namespace flutebook::services
