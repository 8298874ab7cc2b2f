// Numbers that are not plain decimals: a length with a fraction, as a rule shows it; and what is no number to this
// program, but is one to whoever wrote it, with what to write in its place.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace flutebook::fields {

/// `15 1/4 in`, `3/4 in`: a whole number or none, a fraction, and what stands behind both.
struct WrittenFraction {
    double value;          // NaN where the fraction is none that a rule shows
    std::string fraction;  // "1/4"
    std::string unit;      // without the space before it; empty where there is none
};

/// Nothing where the text does not begin with a fraction, or with a number and a fraction.
[[nodiscard]] std::optional<WrittenFraction> read_fraction(std::string_view text);

/// "; write 1000" of `1 000`, "; write 2500 or 2.500" of `2,500`, "; write 12 mm" of `12mm`: what else a text may have
/// meant that is no plain decimal. Empty where nothing is near.
[[nodiscard]] std::string number_meant(std::string_view text);

}  // namespace flutebook::fields
