// `plugin describe --json`: an entry of `plugin list --json`, whose names have their ranges "low" and "high", and
// "needs": [{"name", "unit", "axis", "meaning", "low", "high", "from" ("fact" or "model")}...].
#pragma once

#include <nlohmann/json_fwd.hpp>

#include "host/desk/describe.hpp"

namespace flutebook::cli {

[[nodiscard]] nlohmann::ordered_json describe_json(const desk::Description& description);

}  // namespace flutebook::cli
