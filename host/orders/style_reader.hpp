// The part of a request that its style decides: which style, its dimensions or outline, further measures, and which way
// the flutes run.
#pragma once

#include "host/fields/map_reader.hpp"
#include "host/orders/request.hpp"

namespace flutebook::orders {

/// Null, and a complaint with every code there is, where the plant knows no such style.
[[nodiscard]] const box_styles::Style* read_style(const fields::Field& field, const plant::Plant& plant);

/// Reads `inside`, `outside`, `outline`, `measures` and `flutes` into the request. Where the style is not known (null),
/// numbers are still checked.
void read_dimensions(fields::MapReader& form, const box_styles::Style* style, Request& request);

}  // namespace flutebook::orders
