#include "host/answers/changed_plugin.hpp"

#include <fmt/format.h>

#include <nlohmann/json.hpp>

namespace flutebook::answers {

namespace {

using services::ChangedPlugin;
using Json = nlohmann::ordered_json;

constexpr std::size_t shown_hash = 12;

std::string hash_of(const ChangedPlugin::File& file) {
    return file.sha256.substr(0, shown_hash);
}

Json file_json(const std::optional<services::ChangedPlugin::File>& file) {
    if (!file) return nullptr;
    return {{"version", file->version}, {"sha256", file->sha256}};
}

}  // namespace

std::string changed_plugin_text(const ChangedPlugin& own) {
    if (!own.was) return fmt::format("{} {} ({}) is loaded now", own.id, own.now->version, hash_of(*own.now));
    if (!own.now) return fmt::format("{} {} ({}) is loaded no more", own.id, own.was->version, hash_of(*own.was));
    if (own.was->version == own.now->version)
        return fmt::format("{} {}, another file: {} -> {}", own.id, own.now->version, hash_of(*own.was),
                           hash_of(*own.now));
    return fmt::format("{} {} -> {}, file {} -> {}", own.id, own.was->version, own.now->version, hash_of(*own.was),
                       hash_of(*own.now));
}

Json changed_plugin_json(const ChangedPlugin& own) {
    return {{"id", own.id}, {"was", file_json(own.was)}, {"now", file_json(own.now)}};
}

}  // namespace flutebook::answers
