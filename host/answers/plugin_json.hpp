// The models as scripts read about them.
//
// `plugin list --json`: {"plugins": [{"id", "version", "title", "file", "built_with",
//   "provides": [{"name", "unit", "axis", "meaning"}...],
//   "charges": [{"line", "title", "unit", "axis", "class", "behaviour"}...], "sheds": [{"cause", "title"}...],
//   "settings": [{"name", "unit", "meaning", "varies_by", "default" (null where it must be given), "low", "high",
//   "choices": [...]}...], "reasons": [...]}...]}
//
// `plugin graph --json`: {"models": [{"id",
//   "needs": [{"name", "unit", "axis", "meaning", "from": S}...], "provides": [{"name", "unit", "axis", "meaning",
//   "to": [id...]}...], "replaced_settings": [{"setting", "unit", "from": S}...]}...],
//   "replaced": [{"name", "by", "place"}...]}
// S = {"kind" (fact, model, setting), "model" (null of a fact), "name", "unit"}: what is taken, in its own unit.
// Models stand in the order they are evaluated.
#pragma once

#include <nlohmann/json_fwd.hpp>

#include "host/contract/model.hpp"
#include "host/engine/graph/graph.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::answers {

/// An entry of `plugin list`, and of its "provides".
[[nodiscard]] nlohmann::ordered_json model_json(const contract::Model& model);
[[nodiscard]] nlohmann::ordered_json name_json(const contract::Name& name);

[[nodiscard]] nlohmann::ordered_json plugin_list_json(const engine::Graph& graph);
[[nodiscard]] nlohmann::ordered_json plugin_graph_json(const plant::Plant& plant, const engine::Graph& graph);

}  // namespace flutebook::answers
