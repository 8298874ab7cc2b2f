// Undoes an entry by posting its mirror, never by deletion.
#pragma once

#include <cstdint>
#include <string>

#include "ledger/store/store.hpp"
#include "ledger/values/entry.hpp"
#include "ledger/writing/posting.hpp"

namespace flutebook::ledger {

/// The kind that reversals have; no draft may use it. Their ref is the number of the entry they undo.
inline constexpr const char* reversal_kind = "reversal";

struct Reversal {
    std::int64_t entry;
    Date date;  // in an open month, not before the entry's own
    std::string why, who;
};

/// Posts the mirror of an entry: the same shift, centre, order and board; movements and expected losses of the same
/// size with the other sign; `why` as its note. A count has no mirror: it no longer counts in the month of the
/// reversal (a closed month keeps it). Throws LedgerError, refused: no such entry, reversed before, itself a reversal
/// or a month's close, a closed month, no reason given.
[[nodiscard]] Posted reverse(Store& store, const Reversal& reversal);

}  // namespace flutebook::ledger
