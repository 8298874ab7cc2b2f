// What was answered for each quantity, then and today, figure by figure and line by line. Figures are compared by their
// keys: one that only a newer or an older document has is told, and makes no quote another.
#pragma once

#include <optional>
#include <vector>

#include "host/answers/quote_answer.hpp"
#include "host/answers/recheck_answer.hpp"

namespace flutebook::services {

/// Two answers to the same request, every quantity of it in the same order. `now` may be null: today nothing is
/// answered. What --explain adds is a view of the same figures, and left out.
[[nodiscard]] std::vector<answers::ChangedQuantity> changed_quantities(const answers::RequestAnswer& was,
                                                                       const answers::RequestAnswer* now);

/// What the quantities of an answer came to.
[[nodiscard]] std::vector<std::optional<answers::Total>> totals_of(const answers::RequestAnswer& answer);

}  // namespace flutebook::services
