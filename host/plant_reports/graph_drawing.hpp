// `plugin graph --dot` and `--svg`: the graph of the models, in Graphviz's language and drawn by Graphviz.
#pragma once

#include <string>

#include "host/engine/graph/graph.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::plant_reports {

/// A box for each model, with the facts it takes from the plant and the request; an arrow from each model to whoever
/// takes its numbers, named with their units. A dashed arrow is a number that the plant prefers in place of another.
[[nodiscard]] std::string plugin_graph_dot(const plant::Plant& plant, const engine::Graph& graph);

/// A drawing, or why there is none: exactly one is not empty.
struct Drawn {
    std::string svg, complaint;
};

/// Has the program `dot` draw a graph that is written in its language. Waits for it.
[[nodiscard]] Drawn drawn_as_svg(const std::string& dot);

}  // namespace flutebook::plant_reports
