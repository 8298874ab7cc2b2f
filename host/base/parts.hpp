// Rounds parts and their whole so that they still add up.
#pragma once

#include <cstdint>
#include <vector>

namespace flutebook::base {

/// `value` in whole units of 10^-decimals, and back.
[[nodiscard]] std::int64_t in_units(double value, int decimals);
[[nodiscard]] double from_units(std::int64_t units, int decimals);

/// The parts in whole units, so that they come to `whole`: each rounded down, and what is left over goes, a unit each,
/// to those that lost most. Parts that add up to about `whole` are each less than two units away from where they were,
/// and one that was not below nothing is not below nothing now.
[[nodiscard]] std::vector<std::int64_t> parts_of(std::int64_t whole, const std::vector<double>& parts, int decimals);

}  // namespace flutebook::base
