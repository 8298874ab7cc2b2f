// Whether an order's losses are those of the formulas of a run (sdk/include/flutebook/run.hpp), which the month and the
// cost of an order expect. A plant may have another model lay out the run: what it loses otherwise would look like
// excess later, so the quote keeps whose losses they are.
#pragma once

#include <string>

#include "host/engine/engine.hpp"

namespace flutebook::quoting {

/// The model whose losses are not those of the formulas, with the same allowances, to 1e-9 of what was issued; empty
/// where they are.
[[nodiscard]] std::string lost_otherwise_by(const engine::Engine& engine, const engine::Row& row,
                                            const engine::Costing& costing);

}  // namespace flutebook::quoting
