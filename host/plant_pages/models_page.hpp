// The models that a plant has loaded, their connections, and one model with its settings in force.
#pragma once

#include <string>
#include <vector>

#include "host/pages/frame.hpp"
#include "host/plant_answers/model_in_use.hpp"

namespace flutebook::pages {

struct LoadedModels {
    const plant::Plant& plant;
    std::vector<plant_answers::ModelInUse> models;  // in the order of their evaluation
    std::vector<std::string> not_listed;            // plugin files of the plant that are not loaded
};

[[nodiscard]] std::string models_page(const Frame& frame, const LoadedModels& loaded);

[[nodiscard]] std::string model_page(const Frame& frame, const plant_answers::ModelInUse& used);

}  // namespace flutebook::pages
