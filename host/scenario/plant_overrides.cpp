#include "host/scenario/plant_overrides.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <chrono>

#include "host/base/errors.hpp"

namespace flutebook::scenario {

namespace {

using plant::Plant;

template <typename Machine>
void put_machine(std::vector<Machine>& machines, const Machine& machine) {
    const auto found = std::find_if(machines.begin(), machines.end(),
                                    [&](const Machine& known) { return known.code == machine.code; });
    if (found == machines.end())
        machines.push_back(machine);
    else
        *found = machine;
}

void put_price(Plant& plant, const PaperPrice& price) {
    const auto found = std::find_if(plant.papers.begin(), plant.papers.end(),
                                    [&](const plant::Paper& paper) { return paper.code == price.paper; });
    if (found == plant.papers.end())
        throw InputError(
            InputError::Whose::plant,
            {fmt::format("papers.{}: no such paper: found a price for it; name a paper of the plant", price.paper)});
    constexpr base::Date always = std::chrono::year{1} / 1 / 1;
    found->prices = {{always, price.per_tonne, {}}};
}

void put_settings(Plant& plant, const plant::ModelSettings& given) {
    const auto found = std::find_if(plant.models.begin(), plant.models.end(),
                                    [&](const plant::ModelSettings& model) { return model.id == given.id; });
    if (found == plant.models.end())
        throw InputError(
            InputError::Whose::plant,
            {fmt::format("plugins.{}: no such model: found a setting for it; name a model that the plant lists",
                         given.id)});
    for (const auto& setting : given.settings) {
        std::erase_if(found->settings, [&](const plant::GivenSetting& old) { return old.name == setting.name; });
        found->settings.push_back(setting);
    }
}

}  // namespace

Plant with(Plant plant, const PlantOverrides& overrides) {
    if (overrides.folder) plant.folder = *overrides.folder;
    if (overrides.pinned) plant.pinned = *overrides.pinned;
    for (const auto& corrugator : overrides.corrugators) put_machine(plant.corrugators, corrugator);
    for (const auto& converter : overrides.converters) put_machine(plant.converters, converter);
    for (const auto& price : overrides.prices) put_price(plant, price);
    for (const auto& settings : overrides.settings) put_settings(plant, settings);
    return plant;
}

}  // namespace flutebook::scenario
