// What was answered for each quantity, then and today, figure by figure and line by line. Both answers come as the
// JSON that was kept: what is told here is what a script would find.
#pragma once

#include <cstddef>
#include <nlohmann/json_fwd.hpp>
#include <optional>
#include <string>
#include <vector>

#include "host/answers/recheck_answer.hpp"
#include "host/services/quoting/differences.hpp"
#include "ledger/values/money.hpp"

namespace flutebook::services {

/// Two R of `quote --json` for the same request, every quantity of it in the same order. `now` may be null: today
/// nothing is answered. What --explain adds is a view of the same figures, and left out. Throws the JSON library's
/// exception where `was` or `now` is no R.
[[nodiscard]] std::vector<answers::ChangedQuantity> changed_quantities(const nlohmann::ordered_json& was,
                                                                       const nlohmann::ordered_json& now);

/// What the quantities of an R came to.
[[nodiscard]] std::vector<std::optional<answers::Total>> totals_of(const nlohmann::ordered_json& answer);

}  // namespace flutebook::services
