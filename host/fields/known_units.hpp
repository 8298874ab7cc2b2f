// The units that a plant of ordinary files needs, known without the units library: reading its database takes longer
// than costing an order. A test holds each to what the library says of it.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "host/fields/units.hpp"

namespace flutebook::fields {

[[nodiscard]] const std::vector<std::string_view>& known_units();

struct KnownConversion {
    std::string_view from, to;
    double scale;
};
[[nodiscard]] const std::vector<KnownConversion>& known_conversions();

/// Whether this is one of known_units().
[[nodiscard]] bool is_known_unit(std::string_view unit);

/// Between two of known_units(), where it is known; from one of them to itself it always is.
[[nodiscard]] std::optional<Conversion> known_conversion(std::string_view from, std::string_view to);

}  // namespace flutebook::fields
