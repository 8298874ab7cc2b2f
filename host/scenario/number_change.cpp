#include "host/scenario/number_change.hpp"

#include <fmt/format.h>

#include <array>
#include <charconv>
#include <cmath>
#include <system_error>

#include "host/base/characters.hpp"
#include "host/base/decimal.hpp"
#include "host/base/quoted_text.hpp"
#include "host/fields/written_number.hpp"

namespace flutebook::scenario {

namespace {

constexpr double whole_percent = 100;

// `+5%`, `-2.5 %`: the sign makes it a change. A negative value has none behind it.
std::optional<double> percent_in(std::string_view text) {
    if (text.size() < 3 || text.back() != '%' || (text.front() != '+' && text.front() != '-')) return std::nullopt;
    const bool is_less = text.front() == '-';
    text.remove_prefix(1);
    text.remove_suffix(1);
    if (text.ends_with(' ')) text.remove_suffix(1);
    const auto number = base::read_decimal(text);
    if (!number || number->mark == ',' || text.starts_with('-')) return std::nullopt;
    return is_less ? -number->value : number->value;
}

// Without an exponent, which no file may have.
std::string plain_decimal(double value) {
    std::array<char, 400> text{};
    const auto end = std::to_chars(text.data(), text.data() + text.size(), value, std::chars_format::fixed).ptr;
    return {text.data(), end};
}

}  // namespace

std::variant<NumberChange, std::string> read_change(const std::string& text) {
    static const char* const example = "papers.TL125.price=+5%, energy.power_price=0.19";
    const std::size_t sign = text.find('=');
    if (sign == std::string::npos || sign == 0 || sign + 1 == text.size())
        return fmt::format("is not a change of a number: {}; write NAME=VALUE, NAME=+N% or NAME=-N%: {}",
                           base::shown(text), example);
    NumberChange result{text, text.substr(0, sign), std::nullopt, text.substr(sign + 1)};
    result.percent = percent_in(result.value);
    if (result.percent || (result.value.front() != '+' && result.value.back() != '%' && written_number(result.value)))
        return result;
    return fmt::format(
        "is not a change of a number: {}; behind the sign write a value with or without its unit, or a "
        "change in per cent with its sign: {}",
        base::shown(text), example);
}

std::optional<WrittenNumber> written_number(std::string_view text) {
    if (const auto fraction = fields::read_fraction(text)) {
        if (std::isnan(fraction->value)) return std::nullopt;
        return WrittenNumber{fraction->value, fraction->unit.empty() ? "" : " " + fraction->unit};
    }
    WrittenNumber result{};
    const auto [end, failure] = std::from_chars(text.data(), text.data() + text.size(), result.value);
    if (failure != std::errc() || !std::isfinite(result.value)) return std::nullopt;
    const std::string_view rest = text.substr(static_cast<std::size_t>(end - text.data()));
    if (!rest.empty() && rest.front() != ' ' && rest.front() != '%') return std::nullopt;
    if (rest.size() > 1 && base::is_digit(rest[1])) return std::nullopt;  // `1 000`
    result.unit = rest;
    return result;
}

std::string moved_text(const WrittenNumber& number, double percent) {
    return plain_decimal(base::short_decimal(number.value * (whole_percent + percent) / whole_percent)) + number.unit;
}

}  // namespace flutebook::scenario
