// The trim of webs as counted in a ledger, and the share that an order is quoted with.
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>

#include "host/base/date.hpp"
#include "host/plant/trim_policy.hpp"
#include "ledger/values/entry.hpp"
#include "ledger/values/mass.hpp"

namespace flutebook::plant {

/// Fewer runs than these say little of the next one.
inline constexpr std::int64_t enough_runs = 30;

/// What a ledger says of a board on a day, for a request that asks for its share.
struct TrimFinding {
    std::optional<TrimPolicy> policy;  // of the board, else of the plant; nothing where neither has runs enough
    TrimOrigin looked_at;              // where it was looked, with the runs that were found
    std::string ledger;                // its file; empty where none is known
};

/// Of a board's code, on the day of a request. Throws LedgerError. Any thread.
using TrimSource = std::function<TrimFinding(const std::string& board, base::Date day)>;

/// The twelve whole months before a day.
[[nodiscard]] TrimOrigin twelve_months_before(const std::string& board, base::Date day);

/// "found 12 corrugator runs of B-140 and 25 of the plant in ledger.db from 2025-10 to 2026-09".
[[nodiscard]] std::string found_text(const TrimFinding& finding);

/// "2026-09".
[[nodiscard]] std::string month_text(ledger::Month month);

}  // namespace flutebook::plant
