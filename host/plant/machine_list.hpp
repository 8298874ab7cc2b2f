// The machines of a plant as one list (corrugators first, then converters, then dispatch).
#pragma once

#include <cstddef>
#include <string>

#include "host/plant/plant.hpp"

namespace flutebook::plant {

[[nodiscard]] std::size_t machine_count(const Plant& plant);
/// The machine's code, or "dispatch".
[[nodiscard]] const std::string& machine_code(const Plant& plant, std::size_t machine);
[[nodiscard]] const base::Places& machine_places(const Plant& plant, std::size_t machine);

}  // namespace flutebook::plant
