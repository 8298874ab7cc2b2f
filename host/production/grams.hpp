// From kilograms that were weighed or worked out to the whole grams that the ledger keeps.
#pragma once

#include <vector>

#include "ledger/values/mass.hpp"

namespace flutebook::production {

/// The nearest gram, halves away from zero. The mass is below `most_kg`.
[[nodiscard]] Grams to_grams(double kg);
/// Nothing that one row moves is as heavy.
inline constexpr double most_kg = 1e9;

/// Parts of a whole in whole grams that add up to it: each rounded, and the largest takes the difference.
[[nodiscard]] std::vector<Grams> parts_of(Grams whole, const std::vector<double>& parts_kg);

}  // namespace flutebook::production
