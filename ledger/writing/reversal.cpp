#include "ledger/writing/reversal.hpp"

#include <fmt/format.h>

#include <optional>

#include "ledger/reading/entries.hpp"
#include "ledger/store/connection.hpp"
#include "ledger/writing/chain.hpp"
#include "ledger/writing/close.hpp"
#include "ledger/writing/draft_check.hpp"
#include "ledger/writing/entry_writer.hpp"
#include "ledger/writing/saved_entry.hpp"

namespace flutebook::ledger {

namespace {

bool is_blank(const std::string& why) {
    return why.find_first_not_of(" \t\r\n") == std::string::npos;
}

// Why this entry cannot be undone, as the end of a sentence.
std::optional<std::string> objection(const Store& store, const Entry& entry, const Reversal& reversal) {
    const auto& kind = entry.draft.kind;
    if (kind == reversal_kind) return "is a reversal itself; post the document again, under a new ref";
    if (kind == close_kind) return "closes a month; a closed month stays closed";
    if (kind == saved_kind) return "says what was saved, and moves nothing; a saved quote stays";
    if (entry.reversed_by) return fmt::format("was reversed before, by entry {}", *entry.reversed_by);
    if (is_blank(reversal.why)) return "is not reversed without a reason; say why";
    if (!reversal.date.ok() || reversal.date < entry.draft.date)
        return fmt::format("is dated {}; date the reversal on that day or later", to_text(entry.draft.date));
    const Month month = reversal.date.year() / reversal.date.month();
    if (is_closed(store, month))
        return fmt::format("cannot be reversed in {}, which is closed; date the reversal in an open month",
                           to_text(month));
    return std::nullopt;
}

Draft mirror(const Entry& entry, const Reversal& reversal) {
    Draft draft = entry.draft;
    draft.kind = reversal_kind;
    draft.ref = std::to_string(entry.number);
    draft.content = "reverses " + draft.ref;
    draft.date = reversal.date;
    draft.note = reversal.why;
    for (auto& movement : draft.movements) {
        movement.mass = -movement.mass;
        movement.money = -movement.money;
    }
    for (auto& expected : draft.expected) expected.mass = -expected.mass;
    draft.count.reset();
    return draft;
}

}  // namespace

Posted reverse(Store& store, const Reversal& reversal) {
    auto& connection = store.connection();
    Posting posting(store, reversal.who);
    const auto entry = find_entry(store, reversal.entry);
    if (!entry) connection.refuse(fmt::format("there is no entry {}; see what was posted", reversal.entry));
    if (const auto against = objection(store, *entry, reversal))
        connection.refuse(fmt::format("entry {} {}", entry->number, *against));
    const auto draft = mirror(*entry, reversal);
    if (const auto fault = fault_of(draft, DraftSource::books))
        connection.refuse(fmt::format("reversal of entry {}: {}", entry->number, *fault));
    auto& writer = connection.entry_writer();
    const Actor actor = writer.actor(reversal.who, connection.clock().now());
    const auto number = writer.add(draft, actor, entry->number);
    static_cast<void>(posting.commit());
    return {number};
}

}  // namespace flutebook::ledger
