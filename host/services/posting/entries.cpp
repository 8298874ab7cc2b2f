#include "host/services/posting/entries.hpp"

#include "ledger/proof/seal_check.hpp"
#include "ledger/reading/entries.hpp"
#include "ledger/writing/saved_entry.hpp"

namespace flutebook::services {

answers::EntriesAnswer entries(const ledger::Store& store, ledger::Month month, SavedEntries saved) {
    const ledger::Snapshot snapshot(store);
    ledger::expect_seal_holds(store, month);
    answers::EntriesAnswer answer{month, {}};
    ledger::visit_entries(store, month, [&](const ledger::Entry& entry) {
        if (saved == SavedEntries::leave_out && entry.draft.kind == ledger::saved_kind) return;
        answer.entries.push_back(entry);
        auto& draft = answer.entries.back().draft;
        draft.movements = {};
        draft.expected = {};
        draft.content = {};
    });
    return answer;
}

}  // namespace flutebook::services
