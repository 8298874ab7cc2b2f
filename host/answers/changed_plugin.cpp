#include "host/answers/changed_plugin.hpp"

#include <fmt/format.h>

#include <nlohmann/json.hpp>

#include "host/answers/json_text.hpp"

namespace flutebook::answers {

namespace {

constexpr std::size_t shown_hash = 12;

std::string hash_of(const ChangedPlugin::File& file) {
    return file.sha256.substr(0, shown_hash);
}

Json file_json(const std::optional<ChangedPlugin::File>& file) {
    if (!file) return nullptr;
    return {{"version", file->version}, {"sha256", file->sha256}};
}

}  // namespace

std::string changed_plugin_text(const ChangedPlugin& changed_plugin) {
    if (!changed_plugin.was)
        return fmt::format("{} {} ({}) is loaded now", changed_plugin.id, changed_plugin.now->version,
                           hash_of(*changed_plugin.now));
    if (!changed_plugin.now)
        return fmt::format("{} {} ({}) is loaded no more", changed_plugin.id, changed_plugin.was->version,
                           hash_of(*changed_plugin.was));
    if (changed_plugin.was->version == changed_plugin.now->version)
        return fmt::format("{} {}, another file: {} -> {}", changed_plugin.id, changed_plugin.now->version,
                           hash_of(*changed_plugin.was), hash_of(*changed_plugin.now));
    return fmt::format("{} {} -> {}, file {} -> {}", changed_plugin.id, changed_plugin.was->version,
                       changed_plugin.now->version, hash_of(*changed_plugin.was), hash_of(*changed_plugin.now));
}

Json changed_plugin_json(const ChangedPlugin& changed_plugin) {
    return {{"id", changed_plugin.id}, {"was", file_json(changed_plugin.was)}, {"now", file_json(changed_plugin.now)}};
}

}  // namespace flutebook::answers
