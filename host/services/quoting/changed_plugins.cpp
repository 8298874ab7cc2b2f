#include "host/services/quoting/changed_plugins.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "host/base/errors.hpp"
#include "host/services/quoting/saved_quote.hpp"

namespace flutebook::services {

namespace {

using Json = nlohmann::ordered_json;

struct SavedPlugin {
    std::string id;
    answers::ChangedPlugin::File file;
};

// In the order they were kept: that of evaluation.
std::vector<SavedPlugin> plugins_then(const ledger::SavedQuote& quote) {
    try {
        std::vector<SavedPlugin> result;
        for (const Json& json : Json::parse(part_of(quote, "plugins.json")))
            result.push_back({json.at("id"), {json.at("version"), json.at("sha256")}});
        return result;
    } catch (const Json::exception&) {
        throw LedgerError(
            LedgerError::Kind::unfit,
            fmt::format("quote {}: its part plugins.json cannot be read; run `flutebook verify`", quote.number));
    }
}

template <typename List>
auto find_id(const List& list, const std::string& id) {
    return std::find_if(list.begin(), list.end(), [&](const auto& item) { return item.id == id; });
}

}  // namespace

std::vector<answers::ChangedPlugin> changed_plugins(const ledger::SavedQuote& quote, const engine::Graph& today) {
    const std::vector<SavedPlugin> then = plugins_then(quote);
    std::vector<answers::ChangedPlugin> result;
    for (const contract::Model& model : today.models) {
        const answers::ChangedPlugin::File now{model.version, model.sha256};
        const auto was = find_id(then, model.id);
        if (was == then.end())
            result.push_back({model.id, std::nullopt, now});
        else if (was->file != now)
            result.push_back({model.id, was->file, now});
    }
    for (const SavedPlugin& saved_plugin : then)
        if (find_id(today.models, saved_plugin.id) == today.models.end())
            result.push_back({saved_plugin.id, saved_plugin.file, std::nullopt});
    return result;
}

}  // namespace flutebook::services
