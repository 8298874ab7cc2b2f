// What a month's closing entry says: the hashes that seal the month, as lines of its content.
//
//   month 2026-10
//   totals HEX        of what the month's entries moved and expected
//   stocks HEX        of what every account held of every material when it ended
//   quotes HEX        head of the saved quotes then, zeros where there was none
//   orders HEX        head of the orders
//   inner C1          one line each: accounts that were not below zero
//
// Both totals and stocks are hashed in the fields of chain.hpp, after a hash of zeros:
//   totals   text "totals 1", number month; number of flows, each: from, to, material, cause (texts), movements, grams,
//            money (numbers); number of expected losses, each: centre, cause (texts), grams (number)
//   stocks   text "stocks 1", number month; number of stocks, each: account, material (texts), grams, money (numbers)
// sorted by their texts, byte by byte; a stock without mass and money is left out.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "ledger/reading/month.hpp"
#include "ledger/values/sha256.hpp"

namespace flutebook::ledger {

struct SealedContent {
    Month month;
    Hash totals{}, stocks{}, quotes{}, orders{};
    std::vector<std::string> inner_accounts;
};

[[nodiscard]] std::string to_text(const SealedContent& content);
/// Nothing where the text is not of this form.
[[nodiscard]] std::optional<SealedContent> parse_sealed(std::string_view text);

[[nodiscard]] Hash totals_hash(Month month, const std::vector<Flow>& flows, const std::vector<ExpectedLoss>& expected);
[[nodiscard]] Hash stocks_hash(Month month, const std::vector<Balance>& stocks);

}  // namespace flutebook::ledger
