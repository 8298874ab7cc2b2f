#include "host/workplace/workplace.hpp"

#include <fmt/format.h>

#include <filesystem>
#include <set>
#include <utility>

#include "host/base/errors.hpp"
#include "host/contract/running_model.hpp"
#include "host/contract/scrap_prices.hpp"
#include "host/installed_set/installed_set.hpp"
#include "host/plant/unusual_numbers.hpp"
#include "host/plugin_check/tried_trust.hpp"
#include "host/plugin_worker/isolation.hpp"
#include "host/sandbox/child.hpp"

namespace flutebook::workplace {

namespace {

constexpr const char* formula_model = "run";  // lays out a run by the formulas alone

// Where another model lays out the run, what is expected later may not be what was quoted.
void add_replaced_run(std::vector<base::Warning>& warnings, const plant::Plant& plant, const engine::Graph& graph) {
    const std::string& shedder = graph.models[graph.shedder].id;
    if (shedder == formula_model) return;
    for (const plant::ModelSettings& entry : plant.models)
        if (entry.id == shedder)
            warnings.push_back(
                {base::place_text(entry.place),
                 fmt::format("losses are quoted by {}, not by `{}`: month and `order cost` expect by the formulas of "
                             "`{}`, and say so where the two differ",
                             shedder, formula_model, formula_model)});
}

// One warning a value: what is dearer than paper is most often unusual too.
void add_unusual_settings(std::vector<base::Warning>& warnings, const plant::Plant& plant,
                          const engine::Engine& engine) {
    const std::vector<contract::UnusualValue> dear =
        contract::scrap_dearer_than_paper(plant, engine.graph().models, engine.settings());
    std::set<std::string> named;
    for (const auto* values : {&dear, &engine.unusual_settings()})
        for (const contract::UnusualValue& value : *values)
            if (std::string at = base::place_text(value.place); named.insert(at).second)
                warnings.push_back({std::move(at), value.text});
}

std::vector<base::Warning> warnings_of(const plant::Plant& plant, const engine::Engine& engine) {
    std::vector<base::Warning> result = plant::unusual_numbers(plant);
    add_replaced_run(result, plant, engine.graph());
    add_unusual_settings(result, plant, engine);
    return result;
}

// What stands between the host and the files of plugins. Not moved: the engine's start refers to it.
struct Guards {
    plugin_check::TriedTrust trust{sandbox::own_program(), plugin_check::Records(plugin_check::records_folder()),
                                   installed_set::installed_models()};
    plugin_worker::ProcessLoader isolation{sandbox::own_program()};
};

// Throws what is wrong with a plant's files, and with the settings of its models or with their plugins. Where
// plugins.yaml has faults, models that do not load may do so because of them.
[[noreturn]] void refuse(const plant::PlantReading& reading) {
    std::vector<std::string> unfit_models;
    base::Diagnostics faults = reading.faults;
    try {
        Guards guards;
        faults.add_all(engine::Engine::setting_faults(reading, installed_plugins(), &guards.trust, &guards.isolation));
    } catch (const ModelError& error) {
        if (reading.is_plugins_file_fit) unfit_models = error.lines();
    }
    std::vector<std::string> lines = faults.lines();
    lines.insert(lines.end(), unfit_models.begin(), unfit_models.end());
    throw InputError(InputError::Whose::plant, std::move(lines));
}

}  // namespace

std::string installed_plugins() {
    const auto program = std::filesystem::read_symlink("/proc/self/exe");
    return (program.parent_path().parent_path() / "lib" / "flutebook" / "plugins").string();
}

Workplace open(const std::string& folder) {
    contract::name_models_at_fatal_signals();
    plant::PlantReading reading = plant::read_plant_with_faults(folder);
    if (!reading.faults.empty()) refuse(reading);
    return open(std::move(reading.plant));
}

Workplace open(plant::Plant plant) {
    contract::name_models_at_fatal_signals();
    Guards guards;
    engine::Engine engine = engine::Engine::start(plant, installed_plugins(), &guards.trust, &guards.isolation);
    std::vector<base::Warning> warnings = warnings_of(plant, engine);
    return {std::move(plant), std::move(engine), std::move(warnings)};
}

Workplace with_plant(const Workplace& workplace, plant::Plant plant) {
    plant.trim_source = workplace.plant.trim_source;
    engine::Engine engine = workplace.engine.with_settings_of(plant);
    std::vector<base::Warning> warnings = warnings_of(plant, engine);
    return {std::move(plant), std::move(engine), std::move(warnings)};
}

}  // namespace flutebook::workplace
