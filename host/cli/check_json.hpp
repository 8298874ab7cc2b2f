// The findings of a check for scripts.
#pragma once

#include <nlohmann/json_fwd.hpp>

#include "host/desk/check_plugin.hpp"

namespace flutebook::cli {

/// {"file", "model", "sha256", "seed", "orders", "passed", "holds", "broken", "not_tried", "rules": [{"rule", "group",
/// "sentence", "state", "said", "again"}], "figures": {NAME: number}}; what there is not to say is null.
[[nodiscard]] nlohmann::ordered_json check_json(const desk::Checked& checked);

}  // namespace flutebook::cli
