// How much a box is estimated to bear from above, by McKee's simplified formula.
//
// Source of the formula: R. C. McKee, J. W. Gander, J. R. Wachuta, "Compression strength formula for corrugated boxes",
// Paperboard Packaging 48(8), 1963: the paper from memory. Its simplified form with the constant 5.87 was seen on the
// page of a test laboratory (westpak.com); 5.874 (from memory) and 5.876 (seen, de.wikipedia.org, "Edge Crush Test")
// are printed too, 0.1 % more. That it holds for boxes higher than a seventh of their perimeter was seen there as well.
#pragma once

#include <optional>

#include "host/answers/strength.hpp"
#include "host/orders/request.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::quoting {

/// Force = 5.87 x ect x sqrt(perimeter x caliper). N, from kN/m and mm; any units that belong together give the same.
[[nodiscard]] double mckee_compression(double ect, double perimeter, double caliper);

/// Whether the formula was made for such a box: one slotted blank (a style 02..), folded round a height.
[[nodiscard]] bool has_estimate(const plant::Plant& plant, const orders::Request& request);

/// Of a box on a board whose `ect` is known, else nothing. The perimeter is that of the inside.
[[nodiscard]] std::optional<answers::Strength> estimated_strength(const plant::Plant& plant,
                                                                  const orders::Request& request);

}  // namespace flutebook::quoting
