// The mass balance: what was issued is in the boxes or under a named cause of loss, for every row.
#pragma once

#include <cstddef>
#include <optional>

#include "host/engine/costing/columns.hpp"
#include "host/engine/graph/graph.hpp"
#include "host/engine/row.hpp"

namespace flutebook::engine {

/// `sum of paper.issued + adhesive.dry = quantity x box.area x board.grammage + sum of losses`, to 1e-9 of the left
/// side, over the first `rows` rows of columns in which all models have run. A breach names the shedding model and
/// the step where mass goes astray. No loss may be below zero by more than the same hair.
[[nodiscard]] std::optional<Fault> check_balance(const Columns& columns, const Slots& slots, const Graph& graph,
                                                 std::size_t rows);

}  // namespace flutebook::engine
