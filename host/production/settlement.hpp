// What a mill pays for when a load is wetter than its contract allows.
#pragma once

#include "host/plant/plant.hpp"

namespace flutebook::production {

/// The mass that is paid, kg, of a load of `kg` at `moisture` (a share of its mass). Above the mill's limit m0,
/// `dry-matter` pays kg (1 - m) / (1 - m0): the dry matter at the moisture agreed; `point-for-point` pays
/// kg (1 - (m - m0)). A drier load earns nothing more.
[[nodiscard]] double paid_kg(const plant::Mill& mill, double kg, double moisture);

}  // namespace flutebook::production
