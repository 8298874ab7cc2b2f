// Which order ended an isolated model, when its process ended before it answered a block.
#pragma once

#include <span>

#include <flutebook/plugin.h>

#include "host/contract/evaluator.hpp"
#include "host/engine/row.hpp"

namespace flutebook::engine {

/// The fault of a block that was lost. A block of several orders is given to the model again, order by order, until it
/// is lost again: that order is named. Where it never is (the process was ended from outside), all of them are.
[[nodiscard]] Fault lost_block(const contract::Model& model, const flutebook_block& block, std::span<const Row> rows,
                               const contract::Failure& failure);

}  // namespace flutebook::engine
