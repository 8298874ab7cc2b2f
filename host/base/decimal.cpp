// By way of its digits: a decimal is what a person or a standard wrote, whatever the arithmetic on the way did to it.
#include "host/base/decimal.hpp"

#include <fmt/compile.h>
#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <cstddef>
#include <limits>
#include <system_error>

#include "host/base/characters.hpp"

namespace flutebook::base {

std::optional<Decimal> read_decimal(std::string_view text) {
    // As many as a number needs that a double can tell apart, and room for idle noughts.
    constexpr std::size_t longest = 40;
    const auto digits = text.substr(text.starts_with('-') ? 1 : 0);
    const auto whole_end = std::find_if_not(digits.begin(), digits.end(), is_digit);
    const auto whole_length = static_cast<std::size_t>(whole_end - digits.begin());
    if (whole_length == 0 || (whole_length > 1 && digits[0] == '0') || text.size() > longest) return std::nullopt;
    const char mark = whole_end == digits.end() ? '\0' : *whole_end;
    if (mark != '\0') {
        const auto places = digits.substr(whole_length + 1);
        if ((mark != '.' && mark != ',') || places.empty() || !std::all_of(places.begin(), places.end(), is_digit))
            return std::nullopt;
    }
    std::string pointed(text);
    std::replace(pointed.begin(), pointed.end(), ',', '.');
    double value = 0;
    const auto [end, failure] = std::from_chars(pointed.data(), pointed.data() + pointed.size(), value);
    if (failure != std::errc() || end != pointed.data() + pointed.size()) return std::nullopt;
    return Decimal{value + 0.0, mark};  // -0 is 0
}

std::string canonical(double value) {
    return fmt::format(FMT_COMPILE("{}"), value);
}

double short_decimal(double value) {
    const auto digits = fmt::format("{:.12g}", value);
    double rounded = value;
    std::from_chars(digits.data(), digits.data() + digits.size(), rounded);
    const double few_bits = 4 * std::numeric_limits<double>::epsilon() * std::abs(value);
    return std::abs(rounded - value) <= few_bits ? rounded : value;
}

}  // namespace flutebook::base
