#include "host/services/posting/entries.hpp"

#include "ledger/proof/seal_check.hpp"
#include "ledger/reading/entries.hpp"
#include "ledger/writing/close.hpp"
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

answers::EntryList entry_list(const ledger::Store& store, const ledger::EntrySearch& search) {
    const ledger::Snapshot snapshot(store);
    ledger::expect_seal_holds(store, search.month);
    answers::EntryList answer{search, ledger::find_entries(store, search), {}, {}};
    for (const auto& entry : answer.found.entries) {
        answer.lost += entry.lost;
        answer.expected += entry.expected;
    }
    return answer;
}

std::optional<answers::EntryAnswer> entry(const ledger::Store& store, const std::string& currency,
                                          std::int64_t number) {
    const ledger::Snapshot snapshot(store);
    auto found = ledger::find_entry(store, number);
    if (!found) return std::nullopt;
    answers::EntryAnswer answer;
    answer.currency = currency;
    answer.entry = *std::move(found);
    const auto& draft = answer.entry.draft;
    if (const auto other = answer.entry.reverses ? answer.entry.reverses : answer.entry.reversed_by)
        answer.counterpart = ledger::find_entry(store, *other);
    answer.is_month_closed = ledger::is_closed(store, draft.date.year() / draft.date.month());
    return answer;
}

}  // namespace flutebook::services
