// Compares the price of scrap with the price of paper: scrap that sells for more than the cheapest paper would make
// waste a profit, so it is probably a typing error.
#pragma once

#include <vector>

#include "host/contract/model.hpp"
#include "host/contract/setting_values.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::contract {

/// Of each model that charges a recovery: its settings in money by mass, as the plant gives them, that are dearer than
/// the cheapest paper's newest price.
[[nodiscard]] std::vector<UnusualValue> scrap_dearer_than_paper(const plant::Plant& plant,
                                                                const std::vector<Model>& models,
                                                                const Settings& settings);

}  // namespace flutebook::contract
