// A block's lines, rounded and added up: the cost of each row, and what late models are told of it.
#pragma once

#include <cstddef>
#include <optional>
#include <span>

#include "host/engine/costing/columns.hpp"
#include "host/engine/engine.hpp"
#include "host/engine/graph/graph.hpp"
#include "host/engine/row.hpp"

namespace flutebook::engine {

/// Writes the cost of every row into its outcome. A fault where a line is no amount of money, or is a recovery and
/// adds to the cost.
[[nodiscard]] std::optional<Fault> add_up(const Columns& columns, const Slots& slots, const Graph& graph,
                                          std::span<Outcome> outcomes);

/// Writes the facts `cost.`: by class and step, the rounded lines of all models that are not late, and at dispatch what
/// the other pieces of a set cost. Faults as add_up() finds them.
[[nodiscard]] std::optional<Fault> write_costs(Columns& columns, const Slots& slots, const Graph& graph,
                                               std::span<const Row> rows);

/// Takes out of a model's lines, in the first `rows` rows, what is charged once for a set: at dispatch all that it
/// charges by the run or by the period.
void silence_once_a_set(Columns& columns, const contract::Model& model, const ModelSlots& slots, std::size_t rows);

}  // namespace flutebook::engine
