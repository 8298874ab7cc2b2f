// `plugin graph --dot`: who feeds whom, in the language of Graphviz.
#pragma once

#include <string>

#include "host/engine/graph/graph.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::reports {

/// A box for each model, with the facts it takes from the plant and the request; an arrow from each model to whoever
/// takes its numbers, named with their units. A dashed arrow is a number that the plant prefers in place of another.
[[nodiscard]] std::string plugin_graph_dot(const plant::Plant& plant, const engine::Graph& graph);

}  // namespace flutebook::reports
