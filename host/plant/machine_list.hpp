// The machines of a plant as one list: corrugators first, then converters, then dispatch. The suppliers of bought
// boards follow after them and are not counted.
#pragma once

#include <cstddef>
#include <string>

#include "host/plant/plant.hpp"

namespace flutebook::plant {

[[nodiscard]] std::size_t machine_count(const Plant& plant);
/// Of one of the plant's corrugators or suppliers.
[[nodiscard]] std::size_t machine_index(const Plant& plant, const Corrugator& maker);
/// The machine's code, or "dispatch"; a supplier's name.
[[nodiscard]] const std::string& machine_code(const Plant& plant, std::size_t machine);
[[nodiscard]] const base::Places& machine_places(const Plant& plant, std::size_t machine);

}  // namespace flutebook::plant
