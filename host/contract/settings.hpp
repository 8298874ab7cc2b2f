// What the plant and the request set for each model, checked against what the model declares: unknown names, units,
// ranges, choices and missing values are errors with file, line and column.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "host/base/place.hpp"
#include "host/contract/model.hpp"
#include "host/orders/request.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::contract {

/// The values of one setting. `values` has one entry for a plant setting, one per paper, flute or machine for the
/// tables, none for a request setting, which stands in Order::request_settings at `request_index`.
struct SettingValues {
    std::vector<double> values;
    std::vector<base::Place> places;  // as many; line 0 where the default holds
    double of_liner = 0;              // of a flute setting
    std::size_t request_index = 0;
};

/// By model, then by setting, in the order of the declarations.
using Settings = std::vector<std::vector<SettingValues>>;

/// Whether a plant may leave a required setting out because another model's number is taken instead.
using Replaced = std::vector<std::vector<char>>;

/// Throws InputError (plant) with every error of plugins.yaml.
[[nodiscard]] Settings read_settings(const plant::Plant& plant, const std::vector<Model>& models,
                                     const Replaced& replaced);

/// The request settings of all models, in the order of their `request_index`. Throws InputError (request) with every
/// error of `extras`.
[[nodiscard]] std::vector<double> read_request_settings(const orders::Request& request, const std::string& currency,
                                                        const std::vector<Model>& models);

/// Where a request gives a setting; nothing where the default holds.
[[nodiscard]] std::optional<base::Place> place_in_request(const orders::Request& request, const Model& model,
                                                          const Setting& setting);

}  // namespace flutebook::contract
