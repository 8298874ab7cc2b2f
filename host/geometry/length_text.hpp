// A length as people of the plant read it.
#pragma once

#include <fmt/format.h>

#include <cmath>
#include <string>

#include "host/plant/plant.hpp"

namespace flutebook::geometry {

/// "2050 mm", "344.5 mm"; where the plant is shown us units, "80.709 in". To a thousandth.
[[nodiscard]] inline std::string length_text(double length_mm, plant::Units units) {
    const bool metric = units == plant::Units::metric;
    const double length = metric ? length_mm : length_mm / 25.4;
    return fmt::format("{} {}", std::round(length * 1000) / 1000, metric ? "mm" : "in");
}

}  // namespace flutebook::geometry
