// A number as it is read off a ruler in inches: 15 1/4, or 3/8.
#pragma once

#include <optional>
#include <string_view>

namespace flutebook::fields {

struct MixedNumber {
    double value;           // exact
    std::string_view unit;  // what follows behind one space; empty where nothing does. A view into the text
};

/// A whole number, a space and a fraction, or a fraction alone; the fraction is below 1, in halves, quarters, eighths,
/// sixteenths, 32nds or 64ths. Nothing for any other text.
[[nodiscard]] std::optional<MixedNumber> read_mixed_number(std::string_view text);

}  // namespace flutebook::fields
