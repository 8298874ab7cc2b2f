#include "host/desk/changed_inputs.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <nlohmann/json.hpp>

#include "host/catalogue/document.hpp"
#include "host/desk/saved_quote.hpp"
#include "host/errors.hpp"

namespace flutebook::desk {

namespace {

using catalogue::Complaints;
using Json = nlohmann::ordered_json;

struct PluginThen {
    std::string id;
    ChangedPlugin::File file;
};

std::vector<Leaf> leaves(const std::optional<catalogue::Node>& document, const Complaints& complaints) {
    complaints.throw_if_any(InputError::Whose::plant);
    return leaves_of(*document);
}

std::vector<Difference> in_file(const ledger::SavedQuote& quote, const std::string& folder, const std::string& name) {
    Complaints complaints;
    const std::string today = (std::filesystem::path(folder) / name).lexically_normal().string();
    const auto now = leaves(catalogue::read_document(today, complaints), complaints);
    const std::string part = "plant/" + name;
    const std::string saved = fmt::format("{}/{}", quote.number, part);
    const auto was = leaves(catalogue::parse_document(part_of(quote, part), saved, complaints), complaints);
    return differences(was, now);
}

// In the order they were kept: that of evaluation.
std::vector<PluginThen> plugins_then(const ledger::SavedQuote& quote) {
    try {
        std::vector<PluginThen> made;
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

std::vector<ChangedKey> changed_keys(const ledger::SavedQuote& quote, const std::string& folder) {
    std::vector<ChangedKey> made;
    for (const std::string& name : catalogue::plant_file_names())
        for (Difference& own : in_file(quote, folder, name)) made.push_back({name, std::move(own)});
    return made;
}

std::vector<ChangedPlugin> changed_plugins(const ledger::SavedQuote& quote, const engine::Graph& today) {
    const std::vector<PluginThen> then = plugins_then(quote);
    std::vector<ChangedPlugin> made;
    for (const engine::Model& model : today.models) {
        const ChangedPlugin::File now{model.version, model.sha256};
        const auto was = find_id(then, model.id);
        if (was == then.end())
            made.push_back({model.id, std::nullopt, now});
        else if (was->file != now)
            made.push_back({model.id, was->file, now});
    }
    for (const PluginThen& own : then)
        if (find_id(today.models, own.id) == today.models.end()) made.push_back({own.id, own.file, std::nullopt});
    return made;
}

}  // namespace flutebook::desk
