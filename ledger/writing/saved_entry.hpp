// The entry that an act of saving quotes or taking orders adds to the chain: the one head covers them from then on. It
// moves nothing, is dated today, and says how many there are and the heads of their chains:
//
//   quotes 12 HEX
//   orders 3 HEX      zeros where there is none
//   records 14 HEX    of quotes; left out where there is none
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "ledger/store/connection.hpp"
#include "ledger/values/sha256.hpp"
#include "ledger/writing/entry_writer.hpp"

namespace flutebook::ledger {

/// The kind of such entries; no draft may use it. Their ref is the numbers, as "12 quotes, 3 orders,
/// 14 records"; the last is left out where there is none.
inline constexpr const char* saved_kind = "saved";

struct SavedHeads {
    std::int64_t quotes = 0, orders = 0;
    Hash quotes_head{}, orders_head{};
    std::int64_t records = 0;
    Hash records_head{};

    friend bool operator==(const SavedHeads&, const SavedHeads&) = default;
};

[[nodiscard]] std::string to_text(const SavedHeads& heads);
/// Nothing where the text is not of this form.
[[nodiscard]] std::optional<SavedHeads> parse_saved(std::string_view text);

/// Within a transaction: adds the entry, where what is saved now stands in none. That is so after each act of saving,
/// and in the first transaction of a ledger whose quotes an older version saved.
void record_saved(Connection& connection, const std::string& who);

}  // namespace flutebook::ledger
