// A plant that differs from its files in named ways: a saved quote opened again, an order as it was made, and later
// every "what if".
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "host/plant/plant.hpp"

namespace flutebook::scenario {

/// A paper's price on every day, in money per t.
struct PaperPrice {
    std::string paper;
    double per_tonne;
};

/// Everything in which a plant differs. What is left empty stays as the plant has it. A value, free to copy and keep.
struct PlantOverrides {
    std::optional<std::string> folder{};                     // where its plugins are looked for
    std::optional<std::vector<plant::PinnedFile>> pinned{};  // the files that may be loaded
    std::vector<plant::Corrugator> corrugators{};            // each replaces the one of its code, or is added
    std::vector<plant::Converter> converters{};              // likewise
    std::vector<PaperPrice> prices{};
    std::vector<plant::ModelSettings> settings{};  // each setting replaces the one of its name, or is added
};

/// The plant with its overrides. Settings count when an engine is started with it, everything else at once. Throws
/// InputError (plant) where a price is of an unknown paper, or a setting of a model that the plant does not list.
[[nodiscard]] plant::Plant with(plant::Plant plant, const PlantOverrides& overrides);

}  // namespace flutebook::scenario
