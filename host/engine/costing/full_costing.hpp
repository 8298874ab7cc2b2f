// A row with all that stands behind its total, read off the columns in which it was costed.
#pragma once

#include <cstddef>

#include "host/engine/costing/blocks.hpp"
#include "host/engine/engine.hpp"

namespace flutebook::engine {

/// Of row `r` of a block that has run; `cost` is what the row came to.
[[nodiscard]] Costing costing_of(const Blocks& blocks, const Columns& columns, std::size_t r, Money cost);

}  // namespace flutebook::engine
