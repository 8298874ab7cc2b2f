// A number that is a short decimal but for the last bits of a double, as that decimal.
#pragma once

namespace flutebook::base {

/// The decimal of at most twelve digits that lies within a few bits of `value`, else `value`: 25.400000000000002 is
/// 25.4, and 1/3 stays what it is.
[[nodiscard]] double short_decimal(double value);

}  // namespace flutebook::base
