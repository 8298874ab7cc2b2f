// The sums that a closing entry seals, worked out again from what was recounted, in the order in which they are hashed.
#pragma once

#include <array>
#include <cstdint>
#include <map>
#include <vector>

#include "ledger/proof/totals_proof.hpp"
#include "ledger/reading/month.hpp"
#include "ledger/store/database.hpp"
#include "ledger/values/mass.hpp"

namespace flutebook::ledger::proof {

using StockSums = std::map<std::array<std::int64_t, 2>, RecountedSum>;  // account, material

/// Adds what the month's entries moved to the stocks that it began with.
void add_flows(StockSums& stocks, const Recount& recount, std::int64_t month);
/// As the file keeps them with the seal of the month.
[[nodiscard]] StockSums stored_stocks(Database& books, std::int64_t month);
/// Without zeros.
[[nodiscard]] std::vector<Balance> sorted_stocks(const StockSums& stocks, const NameList& names);
[[nodiscard]] bool are_equal(const std::vector<Balance>& left, const std::vector<Balance>& right);

[[nodiscard]] std::vector<Flow> sealed_flows(const Recount& recount, const NameList& names, std::int64_t month);
[[nodiscard]] std::vector<ExpectedLoss> sealed_expected(const Recount& recount, const NameList& names,
                                                        std::int64_t month);

}  // namespace flutebook::ledger::proof
