// Plugins as reports: a plugin's own account of itself and its entry for plugins.yaml, the models of a plant, and the
// facts that the host gives them.
#pragma once

#include <string>

#include "host/engine/graph/graph.hpp"
#include "host/plant/plant.hpp"
#include "host/plant_answers/plugin_answer.hpp"
#include "host/render/report.hpp"

namespace flutebook::plant_reports {

/// What the report is for: a file at hand, named with its place and compiler; or a page about the model for any
/// machine, with its entry for plugins.yaml.
enum class DescribeScope { file, model };

/// Needs, settings, what it provides, charges and sheds, and when it refuses an order.
[[nodiscard]] render::Report describe_report(const plant_answers::DescribedModel& described, DescribeScope scope);

/// An entry of `plugins`, indented to be appended to plugins.yaml: every setting with its sentence and its default. A
/// setting that must be given stands there empty, and the file is refused until somebody fills it in. Below it, as
/// comments, what a request may set.
[[nodiscard]] std::string describe_yaml(const plant_answers::DescribedModel& described);

/// Id, version, title, file; what each provides, charges and sheds, and which settings it takes. In order of
/// evaluation. Then the plugin files of the plant that are not loaded, and how they would be.
[[nodiscard]] render::Report plugin_list_report(const engine::Graph& graph, const std::vector<std::string>& not_listed);

/// For each model what it takes and from whom, what it gives and to whom, with units; then what is replaced.
[[nodiscard]] render::Report plugin_graph_report(const plant::Plant& plant, const engine::Graph& graph);

/// Every number that the host gives to whichever model needs it.
[[nodiscard]] render::Report facts_report();

}  // namespace flutebook::plant_reports
