// A price of scrap held beside what paper costs: scrap that sells for more than the cheapest paper makes waste a
// profit, and is a slip of the pen.
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
