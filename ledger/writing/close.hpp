// Closing a month: what it held is sealed, and it takes no entry again.
//
// Months are closed in their order, so that a closed month's opening stock can never change: a month is closed when it
// or a later one was closed.
#pragma once

#include <chrono>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "ledger/store/store.hpp"
#include "ledger/values/entry.hpp"

namespace flutebook::ledger {

/// The kind of the entry that closes a month; no draft may use it. Its ref is the month.
inline constexpr const char* close_kind = "close";

struct Close {
    Month month;
    /// Accounts whose stock, all materials together, may not be below zero when the month ends. Kept with the seal:
    /// verify() holds later copies to them.
    std::vector<std::string> inner_accounts;
    /// Posted with the seal, in the same transaction: what counts found, to or from `unexplained`.
    std::vector<Draft> differences;
    std::string note;  // why a month was closed that does not balance; else empty
    std::string who;
};

/// A closed month. Its closing entry's content holds the hash of the month's totals and closing stocks, and the heads
/// of the saved quotes and orders, so that the one head seals all of them.
struct Seal {
    Month month;
    std::int64_t entry;  // the closing entry
    std::string head;    // its hash, in hex: to be kept elsewhere
    std::string note, who;
    std::chrono::sys_seconds when;
};

/// All or nothing, on disk when it returns. Throws LedgerError, refused: the month is closed already, an earlier
/// month holds entries and is open, its totals are not what its entries make (expect_fit_to_close), an inner account is
/// below zero (one line each), a difference that the ledger would not take.
[[nodiscard]] Seal close_month(Store& store, const Close& close);

/// Throws what close_month() would where the month is not the next to be closed.
void expect_in_turn(const Store& store, Month month);

/// The latest closed month.
[[nodiscard]] std::optional<Seal> last_seal(const Store& store);
/// The seal of that very month, if it has one.
[[nodiscard]] std::optional<Seal> seal_of(const Store& store, Month month);
/// Whether a document dated in `month` would be refused.
[[nodiscard]] bool is_closed(const Store& store, Month month);

}  // namespace flutebook::ledger
