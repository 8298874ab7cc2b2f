#include "host/base/inches.hpp"

#include <fmt/format.h>

#include <cmath>
#include <cstdint>
#include <numeric>

namespace flutebook::base {

namespace {

constexpr std::int64_t parts_of_inch = 16;
constexpr double largest = 1e9;  // beyond any length; its sixteenths are whole numbers still

std::string decimal_inches(double inches) {
    return fmt::format("{}", std::round(inches * 1000) / 1000 + 0.0);
}

std::string ruler_text(std::int64_t sixteenths) {
    const std::int64_t size = std::abs(sixteenths), whole = size / parts_of_inch, part = size % parts_of_inch;
    const std::string sign = sixteenths < 0 ? "-" : "";
    if (part == 0) return fmt::format("{}{}", sign, whole);
    const std::int64_t common = std::gcd(part, parts_of_inch);
    const std::string fraction = fmt::format("{}/{}", part / common, parts_of_inch / common);
    return sign + (whole == 0 ? fraction : fmt::format("{} {}", whole, fraction));
}

// What a sum of lengths loses in its last bits, and no ruler shows.
bool are_whole(double sixteenths) {
    return std::abs(sixteenths - std::round(sixteenths)) < 1e-5;
}

bool is_on_ruler(double inches) {
    return std::abs(inches) < largest;  // false for NaN
}

}  // namespace

std::optional<std::string> whole_sixteenths(double inches) {
    const double sixteenths = inches * parts_of_inch;
    if (!is_on_ruler(inches) || !are_whole(sixteenths)) return std::nullopt;
    return ruler_text(std::llround(sixteenths));
}

std::string exact_inches(double inches) {
    return whole_sixteenths(inches).value_or(decimal_inches(inches));
}

std::string inches_to_sixteenths(double inches) {
    const std::optional<std::string> whole = whole_sixteenths(inches);
    if (whole || !is_on_ruler(inches)) return whole.value_or(decimal_inches(inches));
    const std::int64_t nearest = std::llround(inches * parts_of_inch);
    return nearest == 0 ? decimal_inches(inches) : "~" + ruler_text(nearest);
}

}  // namespace flutebook::base
