// The documents about plugins: what `plugin list`, `graph`, `describe`, `check`, `facts` and `new` write with --json.
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
// S = {"kind" (fact, model, setting), "model" (null of a fact), "name", "unit"}: the number that is taken, in its unit.
// Models are listed in the order of their evaluation.
//
// `plugin describe --json`: an entry of `plugin list --json`, whose names have their ranges "low" and "high", and
//   "needs": [{"name", "unit", "axis", "meaning", "low", "high", "from" ("fact" or "model")}...]
//
// `plugin check --json`: {"file", "model", "sha256", "seed", "orders", "passed", "holds", "broken", "not_tried",
//   "rules": [{"rule", "group", "sentence", "state", "said", "again"}...], "figures": {NAME: number}}; a text that does
//   not apply is null
//
// `plugin facts --json`: {"facts": [{"name", "unit", "axis", "meaning", "low", "high", "replaceable"}...]}
//
// `plugin new --json`: {"folder", "files": [...], "prefix"}: what was written, by path from the folder, and where CMake
//   finds the SDK
#pragma once

#include <string>

#include "host/plant/plant.hpp"
#include "host/plant_answers/model_in_use.hpp"
#include "host/plant_answers/plugin_answer.hpp"

namespace flutebook::plant_answers {

/// "holds", "broken", "not tried"
[[nodiscard]] std::string state_words(Checked::State state);

/// The loaded models, and the plugin files of the plant that are not.
[[nodiscard]] std::string plugin_list_document(const engine::Graph& graph, const std::vector<std::string>& not_listed);
[[nodiscard]] std::string plugin_graph_document(const plant::Plant& plant, const engine::Graph& graph);
[[nodiscard]] std::string describe_document(const DescribedModel& described);
[[nodiscard]] std::string model_in_use_document(const ModelInUse& used);
[[nodiscard]] std::string check_document(const Checked& checked);
[[nodiscard]] std::string facts_document();
[[nodiscard]] std::string new_plugin_document(const std::string& name, const NewPlugin& plugin);

}  // namespace flutebook::plant_answers
