// Entries, read one by one.
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "ledger/store/store.hpp"
#include "ledger/values/entry.hpp"

namespace flutebook::ledger {

[[nodiscard]] std::optional<Entry> find_entry(const Store& store, std::int64_t number);
[[nodiscard]] std::optional<Entry> find_entry(const Store& store, const std::string& kind, const std::string& ref);

/// All that name the order, in order of posting; reversals and what they undo among them.
[[nodiscard]] std::vector<Entry> entries_of_order(const Store& store, const std::string& order);

/// Calls `visit` with each entry dated in the month, in order of posting. One at a time is in memory. `visit` may read
/// the same store.
void visit_entries(const Store& store, Month month, const std::function<void(const Entry&)>& visit);

/// The same with the entries alone that undo one of an earlier month.
void visit_late_reversals(const Store& store, Month month, const std::function<void(const Entry&)>& visit);

/// The same with the entries alone that are reversals or have a note.
void visit_noted(const Store& store, Month month, const std::function<void(const Entry&)>& visit);

/// Calls `visit` with the kind and content of each entry of the month that stands: neither reversed nor a reversal.
void visit_contents(const Store& store, Month month,
                    const std::function<void(const std::string&, const std::string&)>& visit);

/// The newest masses above zero that left an account, `most` of them at most.
[[nodiscard]] std::vector<Grams> latest_masses(const Store& store, const std::string& from, int most);

/// What moved at which price: `money / mass` is the price.
struct PricedMovement {
    std::int64_t entry;
    Date date;
    Grams mass;
    Money money;
};
/// The latest movement of `material` between two accounts with mass above zero and money of its own, dated on or
/// before `date` (on the same day the one posted last), that was not reversed.
[[nodiscard]] std::optional<PricedMovement> last_priced(const Store& store, const std::string& from,
                                                        const std::string& to, const std::string& material, Date date);

/// Whether anything moved in or out of the account on that day or before, other than from `except_from`. What was
/// reversed, and what reverses it, never moved.
[[nodiscard]] bool has_moved(const Store& store, const std::string& account, Date by, const std::string& except_from);

/// The newest entry; nothing in an empty ledger.
struct Head {
    std::int64_t entry;
    std::string hash;  // hex
};
[[nodiscard]] std::optional<Head> head(const Store& store);

}  // namespace flutebook::ledger
