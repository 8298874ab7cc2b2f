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
    ChangedPlugin::File file;
};

// In the order they were kept: that of evaluation.
std::vector<SavedPlugin> plugins_then(const ledger::SavedQuote& quote) {
    try {
        std::vector<SavedPlugin> made;
        for (const Json& own : Json::parse(part_of(quote, "plugins.json")))
            made.push_back({own.at("id"), {own.at("version"), own.at("sha256")}});
        return made;
    } catch (const Json::exception&) {
        throw LedgerError(
            LedgerError::Kind::unfit,
            fmt::format("quote {}: its part plugins.json cannot be read; run `flutebook verify`", quote.number));
    }
}

template <typename List>
auto find_id(const List& list, const std::string& id) {
    return std::find_if(list.begin(), list.end(), [&](const auto& own) { return own.id == id; });
}

}  // namespace

std::vector<ChangedPlugin> changed_plugins(const ledger::SavedQuote& quote, const engine::Graph& today) {
    const std::vector<SavedPlugin> then = plugins_then(quote);
    std::vector<ChangedPlugin> made;
    for (const contract::Model& model : today.models) {
        const ChangedPlugin::File now{model.version, model.sha256};
        const auto was = find_id(then, model.id);
        if (was == then.end())
            made.push_back({model.id, std::nullopt, now});
        else if (was->file != now)
            made.push_back({model.id, was->file, now});
    }
    for (const SavedPlugin& own : then)
        if (find_id(today.models, own.id) == today.models.end()) made.push_back({own.id, own.file, std::nullopt});
    return made;
}

}  // namespace flutebook::services
