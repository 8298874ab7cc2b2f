// A plugin that has changed since a quote was saved: its values, its text and its JSON.
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <optional>
#include <string>

namespace flutebook::answers {

struct ChangedPlugin {
    struct File {
        std::string version, sha256;
        friend bool operator==(const File&, const File&) = default;
    };
    std::string id;
    std::optional<File> was, now;  // `was` alone: no longer loaded; `now` alone: loaded today
};

/// "paper 1.0.0 -> 1.1.0, file 0123456789ab -> ba9876543210"
[[nodiscard]] std::string changed_plugin_text(const ChangedPlugin& changed_plugin);

/// {"id", "was", "now"}, was and now {"version", "sha256"} or null
[[nodiscard]] nlohmann::ordered_json changed_plugin_json(const ChangedPlugin& changed_plugin);

}  // namespace flutebook::answers
