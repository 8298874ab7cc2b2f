#include "host/scenario/number_change.hpp"

#include <fmt/format.h>

#include <array>
#include <charconv>
#include <cmath>
#include <system_error>

#include "host/base/decimal.hpp"
#include "host/base/quoted_text.hpp"

namespace flutebook::scenario {

namespace {

constexpr double whole_percent = 100;

bool has_digit(std::string_view text) {
    return text.find_first_of("0123456789") != std::string_view::npos;
}

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

std::optional<double> whole_at(std::string_view& text) {
    unsigned whole = 0;
    const auto [end, failure] = std::from_chars(text.data(), text.data() + text.size(), whole);
    if (failure != std::errc()) return std::nullopt;
    text.remove_prefix(static_cast<std::size_t>(end - text.data()));
    return whole;
}

// `1/4`, as a ruler has it; what follows stays in `rest`.
struct Fraction {
    double value;
    std::string_view rest;
};

std::optional<Fraction> fraction_at(std::string_view text) {
    const auto above = whole_at(text);
    if (!above || !text.starts_with('/')) return std::nullopt;
    text.remove_prefix(1);
    const auto below = whole_at(text);
    if (!below || !(*below > 0)) return std::nullopt;
    return Fraction{*above / *below, text};
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
        return fmt::format("is no change of a number: {}; write NAME=VALUE, NAME=+N% or NAME=-N%: {}",
                           base::shown(text), example);
    NumberChange result{text, text.substr(0, sign), std::nullopt, text.substr(sign + 1)};
    result.percent = percent_in(result.value);
    if (result.percent || (result.value.front() != '+' && result.value.back() != '%' && written_number(result.value)))
        return result;
    return fmt::format(
        "is no change of a number: {}; behind the sign write a value with or without its unit, or a "
        "change in per cent with its sign: {}",
        base::shown(text), example);
}

std::optional<WrittenNumber> written_number(std::string_view text) {
    WrittenNumber result{};
    std::string_view rest;
    if (const auto fraction = fraction_at(text)) {
        result.value = fraction->value;
        rest = fraction->rest;
    } else {
        const auto [end, failure] = std::from_chars(text.data(), text.data() + text.size(), result.value);
        if (failure != std::errc() || !std::isfinite(result.value)) return std::nullopt;
        rest = text.substr(static_cast<std::size_t>(end - text.data()));
        const auto behind = rest.starts_with(' ') ? fraction_at(rest.substr(1)) : std::nullopt;
        if (behind && result.value >= 0) {
            result.value += behind->value;
            rest = behind->rest;
        }
    }
    if (has_digit(rest) || (!rest.empty() && rest.front() != ' ' && rest.front() != '%')) return std::nullopt;
    result.unit = rest;
    return result;
}

std::string moved_text(const WrittenNumber& number, double percent) {
    return plain_decimal(base::short_decimal(number.value * (whole_percent + percent) / whole_percent)) + number.unit;
}

}  // namespace flutebook::scenario
