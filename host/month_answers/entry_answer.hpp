// Entries of the ledger as people look at them: a list, a page at a time, and one by itself with all that it moved.
#pragma once

#include <optional>
#include <string>

#include "ledger/reading/entry_search.hpp"
#include "ledger/values/entry.hpp"

namespace flutebook::answers {

struct EntryList {
    ledger::EntrySearch search;
    ledger::FoundEntries found;
    Grams lost, expected;  // of the entries on this page
};

struct EntryAnswer {
    std::string currency;
    ledger::Entry entry;
    std::optional<ledger::Entry> counterpart;  // what it reverses, or what reverses it
    bool is_month_closed = false;              // then a reversal is dated on the first open day
};

/// {"month", "kind", "centre", "shift", "order", "cause" (null: any), "after", "next_after" (null: no more),
///  "lost_kg", "expected_kg" (of this page), "entries": [{"entry", "date", "document" (its kind), "ref", "shift",
///  "centre", "order", "note", "who", "reverses", "reversed_by", "lost_kg", "expected_kg"}...]}
[[nodiscard]] std::string entry_list_document(const EntryList& answer);

/// {"entry", "date", "document" (its kind), "ref", "shift", "centre", "order", "board", "note", "who", "written" (UTC),
///  "reverses", "reversed_by", "head" (its hash), "content" (the row as posted), "moved": [{"from", "to", "material",
///  "cause", "kg", "amount"}...], "expected": [{"cause", "kg"}...], "count": {"account", "of", "kg"} or null}
[[nodiscard]] std::string entry_document(const EntryAnswer& answer);

}  // namespace flutebook::answers
