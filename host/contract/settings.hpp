// What the plant and the request set for each model, checked against what the model declares: unknown names, units,
// ranges, choices, keys and missing values are errors with file, line and column.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "host/base/diagnostics.hpp"
#include "host/base/place.hpp"
#include "host/contract/model.hpp"
#include "host/contract/setting_reader.hpp"
#include "host/contract/setting_values.hpp"
#include "host/orders/request.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::contract {

/// Who takes what the plant or a request gives for a setting: its model; or the model that replaces it, which makes the
/// number that counts from it; or nobody. What nobody takes a plant may leave out though it is required, and no request
/// is refused for want of it.
enum class SettingTaker : char { model, replacer, nobody };
/// By model and setting.
using SettingTakers = std::vector<std::vector<SettingTaker>>;

struct PlantSettings {
    Settings values;
    std::vector<UnusualValue> unusual;
};

/// What is wrong with the settings that plugins.yaml gives, of a plant whose files may be at fault too.
[[nodiscard]] base::Diagnostics setting_faults(const plant::Plant& plant, const std::vector<Model>& models,
                                               const SettingTakers& takers, PlantCodes codes);

/// Throws InputError (plant) with every error of plugins.yaml.
[[nodiscard]] PlantSettings read_settings(const plant::Plant& plant, const std::vector<Model>& models,
                                          const SettingTakers& takers);

/// What an order of this request takes of all settings, read with the same models: the values of its date, customer,
/// board and style, and what `extras` gives. They point into `settings`. Throws InputError (request) with every error
/// of `extras`, and where a setting has no value for the order.
[[nodiscard]] OrderSettings settings_of_order(const Settings& settings, const SettingTakers& takers,
                                              const std::vector<Model>& models, const plant::Plant& plant,
                                              const orders::Request& request);

/// What is wrong with the extras of a request, for one whose other fields are at fault. A model that is not loaded is
/// for the reader of requests to refuse.
[[nodiscard]] base::Diagnostics extras_faults(const std::vector<Model>& models, const plant::Plant& plant,
                                              const orders::Request& request);

}  // namespace flutebook::contract
