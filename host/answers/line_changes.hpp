// Two answers for one quantity compared: the total, and each cost line.
#pragma once

#include <optional>
#include <vector>

#include "host/answers/quote_answer.hpp"
#include "host/answers/recheck_answer.hpp"

namespace flutebook::answers {

/// Nothing of what cannot be made.
[[nodiscard]] std::optional<Total> total_of(const RequestAnswer::Quantity& quantity);

/// Every cost line of either quote, also those that do not differ: in the order of `now`, then those that are charged
/// only before. A line stands beside the one of its model, name, step and ply; at dispatch however long the routes are.
[[nodiscard]] std::vector<ChangedLine> lines_beside(const Quote& was, const Quote& now);

}  // namespace flutebook::answers
