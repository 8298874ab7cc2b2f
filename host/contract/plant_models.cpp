#include "host/contract/plant_models.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <utility>

#include "host/base/errors.hpp"
#include "host/contract/description.hpp"
#include "host/contract/evaluator.hpp"
#include "host/contract/library.hpp"
#include "host/contract/plugin_file.hpp"
#include "host/contract/trust.hpp"

namespace flutebook::contract {
namespace {

std::string file_of(const plant::Plant& plant, const std::string& installed, const plant::ModelSettings& entry) {
    const std::string file = entry.served_by() + ".so";
    const auto plants_file = std::filesystem::path(plant.folder) / "plugins" / file;
    if (std::filesystem::exists(plants_file)) return plants_file.string();
    const auto installed_file = std::filesystem::path(installed) / file;
    if (std::filesystem::exists(installed_file)) return installed_file.string();
    throw ModelError(
        fmt::format("{}: model {}: no such plugin: found neither {} nor {}; build it and put it there, or "
                    "take the entry out",
                    base::place_text(entry.place), entry.served_by(), plants_file.string(), installed_file.string()));
}

void check_pin(const plant::Plant& plant, const std::string& id, const PluginFile& file) {
    for (const plant::PinnedFile& pin : plant.pinned)
        if (pin.model == id && pin.sha256 != file.sha256())
            throw ModelError(
                fmt::format("{}:{}:{}: sha256.{}: {} is another file: found {}, expected {}; put back the "
                            "file that was meant, or pin this one",
                            pin.place.file.text(), pin.place.line, pin.place.column, pin.model, file.name(),
                            file.sha256(), pin.sha256));
}

const plant::IsolatedModel* isolation_of(const plant::Plant& plant, const std::string& id) {
    const auto found =
        std::find_if(plant.isolated.begin(), plant.isolated.end(),
                     [&](const plant::IsolatedModel& isolated_model) { return isolated_model.model == id; });
    return found == plant.isolated.end() ? nullptr : &*found;
}

// Whether the model works in a process of its own: as the plant says, else as it came here.
bool works_apart(const plant::IsolatedModel* isolation, const PluginFile& file, const PluginGuards& guards) {
    if (isolation != nullptr) return isolation->where == plant::IsolatedModel::Where::process;
    return guards.trust != nullptr && guards.isolated_loader != nullptr && !guards.trust->is_installed(file);
}

Model open(const plant::Plant& plant, const std::string& id, PluginFile file, const PluginGuards& guards) {
    const plant::IsolatedModel* isolation = isolation_of(plant, id);
    if (!works_apart(isolation, file, guards)) return describe(load_plugin(file), file.name(), file.id());
    // An isolated model never falls back to running in this process.
    if (guards.isolated_loader == nullptr)
        throw ModelError(fmt::format(
            "{}:{}:{}: isolation.{}: this program has no other process to give it; take the "
            "entry out",
            isolation->place.file.text(), isolation->place.line, isolation->place.column, isolation->model));
    return guards.isolated_loader->open(std::move(file));
}

// A model that serves under another id takes that id; two that provide the same names could not stand side by side.
void rename(Model& model, const plant::ModelSettings& entry) {
    if (!model.provides.empty())
        throw ModelError(
            fmt::format("{}: plugins.{}: {} cannot be loaded under another id: it provides {}; only a model that "
                        "provides nothing can",
                        base::place_text(entry.place), entry.id, model.where(), model.provides.front().name));
    model.id = entry.id;
}

// An entry of plugins.yaml, and the file that serves it.
struct ListedFile {
    const plant::ModelSettings* entry;
    PluginFile file;
};

ListedFile read(const plant::Plant& plant, const std::string& installed, const plant::ModelSettings& entry) {
    PluginFile file = PluginFile::read(file_of(plant, installed, entry));
    file.check_place();
    check_pin(plant, entry.id, file);
    return {&entry, std::move(file)};
}

Model load(const plant::Plant& plant, ListedFile listed, const PluginGuards& guards) {
    if (guards.trust != nullptr) guards.trust->check(listed.file);
    const std::string sha256 = listed.file.sha256();
    Model model = open(plant, listed.entry->id, std::move(listed.file), guards);
    model.sha256 = sha256;
    if (listed.entry->model) rename(model, *listed.entry);
    return model;
}

// Calls `act` for each element; returns the complaints of all.
template <typename Elements, typename Act>
std::vector<std::string> complaints(Elements&& elements, const Act& act) {
    std::vector<std::string> errors;
    for (auto& element : elements) {
        try {
            act(element);
        } catch (const ModelError& error) {
            errors.insert(errors.end(), error.lines().begin(), error.lines().end());
        }
    }
    return errors;
}

}  // namespace

std::vector<Model> open_models(const plant::Plant& plant, const std::string& installed, const PluginGuards& guards) {
    std::vector<ListedFile> files;
    std::vector<std::string> errors = complaints(
        plant.models, [&](const plant::ModelSettings& entry) { files.push_back(read(plant, installed, entry)); });
    std::vector<const PluginFile*> all;
    for (const ListedFile& listed : files) all.push_back(&listed.file);
    if (guards.trust != nullptr) guards.trust->prepare(all);

    std::vector<Model> models;
    for (std::string& error :
         complaints(files, [&](ListedFile& listed) { models.push_back(load(plant, std::move(listed), guards)); }))
        errors.push_back(std::move(error));
    if (!errors.empty()) throw ModelError(std::move(errors));
    return models;
}

}  // namespace flutebook::contract
