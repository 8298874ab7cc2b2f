// The findings of a check for scripts.
#pragma once

#include <nlohmann/json_fwd.hpp>

#include "host/answers/plugin_answer.hpp"

namespace flutebook::answers {

/// "holds", "broken", "not tried"
[[nodiscard]] std::string state_words(Checked::State state);

/// {"file", "model", "sha256", "seed", "orders", "passed", "holds", "broken", "not_tried", "rules": [{"rule", "group",
/// "sentence", "state", "said", "again"}], "figures": {NAME: number}}; what there is not to say is null.
[[nodiscard]] nlohmann::ordered_json check_json(const Checked& checked);

}  // namespace flutebook::answers
