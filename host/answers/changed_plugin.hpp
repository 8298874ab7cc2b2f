// A plugin that is another one than when a quote was saved, as it is told.
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string>

#include "host/services/quoting/changed_plugins.hpp"

namespace flutebook::answers {

/// "paper 1.0.0 -> 1.1.0, file 0123456789ab -> ba9876543210"
[[nodiscard]] std::string changed_plugin_text(const services::ChangedPlugin& changed_plugin);

/// {"id", "was", "now"}, was and now {"version", "sha256"} or null
[[nodiscard]] nlohmann::ordered_json changed_plugin_json(const services::ChangedPlugin& changed_plugin);

}  // namespace flutebook::answers
