// The models of a plant, and the facts that the host gives them.
#pragma once

#include "host/engine/graph/graph.hpp"
#include "host/plant/plant.hpp"
#include "host/render/report.hpp"

namespace flutebook::reports {

/// Id, version, title, file; what each provides, charges and sheds, and which settings it takes. In order of
/// evaluation.
[[nodiscard]] render::Report plugin_list_report(const engine::Graph& graph);

/// For each model what it takes and from whom, what it gives and to whom, with units; then what is replaced.
[[nodiscard]] render::Report plugin_graph_report(const plant::Plant& plant, const engine::Graph& graph);

/// Every number that the host gives to whichever model needs it.
[[nodiscard]] render::Report facts_report();

}  // namespace flutebook::reports
