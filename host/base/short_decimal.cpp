// By way of its digits: a decimal is what a person or a standard wrote, whatever the arithmetic on the way did to it.
#include "host/base/short_decimal.hpp"

#include <fmt/format.h>

#include <charconv>
#include <cmath>
#include <limits>

namespace flutebook::base {

double short_decimal(double value) {
    const auto digits = fmt::format("{:.12g}", value);
    double rounded = value;
    std::from_chars(digits.data(), digits.data() + digits.size(), rounded);
    const double few_bits = 4 * std::numeric_limits<double>::epsilon() * std::abs(value);
    return std::abs(rounded - value) <= few_bits ? rounded : value;
}

}  // namespace flutebook::base
