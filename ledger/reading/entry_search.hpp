// Searches the entries of a month by their attributes, a page at a time.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "ledger/store/store.hpp"
#include "ledger/values/entry.hpp"

namespace flutebook::ledger {

/// All that are given hold. A name that is empty is that of entries which name none.
struct EntrySearch {
    Month month;
    std::optional<std::string> kind = {}, centre = {}, shift = {}, order = {};
    std::optional<std::string> cause = {};  // it moved, or was expected to lose, something by it
    std::int64_t after = 0;                 // entries with a greater number alone
    std::size_t limit = 500;
};

/// An entry without what it moved, but for its losses.
struct FoundEntry {
    std::int64_t number;
    std::string kind, ref;
    Date date;
    std::string shift, centre, order, note, who;
    std::optional<std::int64_t> reverses, reversed_by;
    /// By the cause that is looked for, else by all.
    Grams lost, expected;
};

struct FoundEntries {
    std::vector<FoundEntry> entries;  // in order of posting
    bool has_more;                    // that were not asked for
};

/// Reads the entries of the month, from `after` on, until there are enough.
[[nodiscard]] FoundEntries find_entries(const Store& store, const EntrySearch& search);

/// Whether any entry names the order.
[[nodiscard]] bool has_entries(const Store& store, const std::string& order);

}  // namespace flutebook::ledger
