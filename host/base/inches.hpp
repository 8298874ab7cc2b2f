// A length in inches as a ruler shows it: 15 1/4. The only place that knows this format.
#pragma once

#include <optional>
#include <string>

namespace flutebook::base {

inline constexpr double mm_of_inch = 25.4;  // exactly

/// "15 1/4", "3/8", "-1 1/2", "0"; nothing where the length is no whole number of sixteenths.
[[nodiscard]] std::optional<std::string> whole_sixteenths(double inches);

/// The same, or else a decimal to a thousandth, "80.709".
[[nodiscard]] std::string exact_inches(double inches);

/// Rounded to the nearest sixteenth; `~` stands before what was rounded: "~80 11/16". A length that would
/// be shown as nothing keeps its decimals.
[[nodiscard]] std::string inches_to_sixteenths(double inches);

}  // namespace flutebook::base
