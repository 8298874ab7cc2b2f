// Which cost lines are a material's own: what the papers and the adhesive of an order cost.
#pragma once

#include <cstddef>

#include "host/engine/engine.hpp"

namespace flutebook::services {

/// Charged as material for this ply.
[[nodiscard]] bool is_of_ply(const engine::Graph& graph, const engine::LineAmount& line, std::size_t ply);

/// Charged as material where the adhesive is applied, by a model that lives on it.
[[nodiscard]] bool is_of_adhesive(const engine::Graph& graph, const engine::LineAmount& line);

}  // namespace flutebook::services
