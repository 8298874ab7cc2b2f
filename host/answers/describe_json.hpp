// `plugin describe --json`: an entry of `plugin list --json`, whose names have their ranges "low" and "high", and
// "needs": [{"name", "unit", "axis", "meaning", "low", "high", "from" ("fact" or "model")}...].
#pragma once

#include <nlohmann/json_fwd.hpp>

#include "host/answers/plugin_answer.hpp"

namespace flutebook::answers {

[[nodiscard]] nlohmann::ordered_json describe_json(const DescribedModel& description);

}  // namespace flutebook::answers
