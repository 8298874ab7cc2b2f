#include "host/services/posting/reverse.hpp"

#include "ledger/reading/entries.hpp"
#include "ledger/writing/close.hpp"
#include "ledger/writing/reversal.hpp"

namespace flutebook::services {

namespace {

// The ledger itself says what is wrong with an entry that is not there.
ledger::Date open_day(const ledger::Store& store, const std::optional<ledger::Entry>& entry) {
    const auto entry_date = entry ? entry->draft.date : ledger::Date{};
    const auto seal = ledger::last_seal(store);
    if (!seal || entry_date.year() / entry_date.month() > seal->month) return entry_date;
    return (seal->month + std::chrono::months(1)) / std::chrono::day(1);
}

}  // namespace

answers::ReverseAnswer reverse(ledger::Store& store, const ReverseOptions& asked) {
    const auto entry = ledger::find_entry(store, asked.entry);
    const auto day = asked.date ? *asked.date : open_day(store, entry);
    const auto posted = ledger::reverse(store, {asked.entry, day, asked.why, asked.who});
    return {ledger::find_entry(store, posted.number).value(), entry->draft.kind, entry->draft.ref};
}

}  // namespace flutebook::services
