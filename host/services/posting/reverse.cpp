#include "host/services/posting/reverse.hpp"

#include <fmt/format.h>

#include <charconv>
#include <string>
#include <system_error>
#include <vector>

#include "host/base/quoted_text.hpp"
#include "host/production/document_format.hpp"
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

using Kind = production::Kind;

struct NamedEntry {
    std::string kind;
    std::int64_t number;
};

// Of documents with the ref, in the order of their kinds; `kind` empty: of all kinds.
std::vector<NamedEntry> entries_with_ref(const ledger::Store& store, const std::string& kind, const std::string& ref) {
    std::vector<NamedEntry> found;
    for (const Kind each : {Kind::paper, Kind::corrugator_run, Kind::converter_run, Kind::weighed_scrap, Kind::bale,
                            Kind::ticket, Kind::centre_cost, Kind::count}) {
        const std::string name = production::name_of(each);
        if (!kind.empty() && kind != name) continue;
        if (const auto entry = ledger::find_entry(store, name, ref)) found.push_back({name, entry->number});
    }
    return found;
}

[[noreturn]] void refuse_name(const ledger::Store& store, const std::string& text,
                              const std::vector<NamedEntry>& found) {
    const auto name = base::shown(text);
    if (found.empty())
        throw LedgerError(
            LedgerError::Kind::refused,
            fmt::format("{}: there is no document with this ref: found {}; give a ref that was posted, or "
                        "an entry's number",
                        store.file(), name));
    std::vector<std::string> kinds;
    for (const auto& entry : found) kinds.push_back(entry.kind);
    throw LedgerError(LedgerError::Kind::refused,
                      fmt::format("{}: several documents have this ref: found {} as {}; say which, such as {}:{}",
                                  store.file(), name, fmt::join(kinds, ", "), kinds.front(), text));
}

}  // namespace

std::int64_t entry_number(const ledger::Store& store, const std::string& text) {
    std::int64_t number = 0;
    const auto* past = text.data() + text.size();
    if (const auto read = std::from_chars(text.data(), past, number); read.ec == std::errc() && read.ptr == past)
        return number;
    auto found = entries_with_ref(store, "", text);
    if (const auto colon = text.find(':'); found.empty() && colon != std::string::npos && colon > 0)
        found = entries_with_ref(store, text.substr(0, colon), text.substr(colon + 1));
    if (found.size() != 1) refuse_name(store, text, found);
    return found.front().number;
}

answers::ReverseAnswer reverse(ledger::Store& store, const ReverseOptions& asked) {
    const auto entry = ledger::find_entry(store, asked.entry);
    const auto day = asked.date ? *asked.date : open_day(store, entry);
    const auto posted = ledger::reverse(store, {asked.entry, day, asked.why, asked.who});
    return {ledger::find_entry(store, posted.number).value(), entry->draft.kind, entry->draft.ref};
}

}  // namespace flutebook::services
