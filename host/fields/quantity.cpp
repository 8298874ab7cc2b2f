// Reads numbers as people write them. The grammar is our own and strict: text that another reader might take for
// another number (010 for eight, 1,5 for fifteen, a quoted 5 for a text) is refused rather than guessed.
#include "host/fields/quantity.hpp"

#include <charconv>
#include <cmath>
#include <cstddef>
#include <optional>
#include <string_view>
#include <system_error>

#include "host/base/characters.hpp"
#include "host/base/decimal.hpp"
#include "host/base/quoted_text.hpp"
#include "host/fields/units.hpp"
#include "host/fields/written_number.hpp"

namespace flutebook::fields {

namespace {

std::string_view without_digits(std::string_view text) {
    while (!text.empty() && base::is_digit(text.front())) text.remove_prefix(1);
    return text;
}

// -?(0|[1-9][0-9]*)(.[0-9]+)?
bool is_plain_decimal(std::string_view text) {
    if (text.starts_with('-')) text.remove_prefix(1);
    if (text.empty() || !base::is_digit(text.front())) return false;
    if (text.size() > 1 && text[0] == '0' && base::is_digit(text[1])) return false;
    text = without_digits(text);
    if (text.empty()) return true;
    return text.size() > 1 && text[0] == '.' && base::is_digit(text[1]) && without_digits(text.substr(1)).empty();
}

// `1 000` is no number and a unit, but two numbers.
bool is_digit_behind(std::string_view text, std::size_t space) {
    return space + 1 < text.size() && base::is_digit(text[space + 1]);
}

std::variant<double, Problem> read_decimal(std::string_view text) {
    double value = 0;
    const auto [end, failure] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (failure != std::errc() || end != text.data() + text.size())
        return Problem{"a number too large to calculate with: found " + base::shown(text)};
    return value + 0.0;  // -0 is 0
}

std::string in_unit(const std::string& unit) {
    return unit == "1" ? "" : " in " + base::shown(unit);
}

Problem not_a_number(std::string_view found, const std::string& unit) {
    return {"not a number: found " + base::shown(found) + ", expected a plain decimal" + in_unit(unit) +
            ", or a decimal, a space and a unit" + number_meant(found)};
}

std::variant<double, Problem> convert(double value, const std::string& written, const std::string& unit,
                                      const UnitWords& words) {
    if (const auto why = why_unit_is_refused(written, words)) return Problem{*why};
    const auto from = library_unit(written, words);
    const auto to_unit = conversion(from, unit);
    if (to_unit) return base::short_decimal((*to_unit)(value));
    const auto wanted = unit == "1" ? std::string("a bare number") : "a unit that converts to " + base::shown(unit);
    return Problem{(is_unit(from) ? "a unit of another kind: found " : "an unknown unit: found ") +
                   base::shown(written) + ", expected " + wanted};
}

bool stands_alone(std::string_view written) {
    return !written.empty() && written.front() != ' ' && written.back() != ' ';
}

// `15 1/4 in`: a length alone is measured so.
std::variant<double, Problem> of_fraction(const WrittenFraction& fraction, std::string_view text,
                                          const std::string& unit, const UnitWords& words) {
    if (std::isnan(fraction.value))
        return Problem{"no fraction of a length: found " + base::shown(fraction.fraction) + " in " + base::shown(text) +
                       ", expected one below 1, in halves to sixty-fourths; write a decimal"};
    const std::string decimal = base::canonical(fraction.value);
    if (fraction.unit.empty())
        return Problem{"a fraction without its unit: found " + base::shown(text) + "; write " + base::shown(decimal) +
                       ", or the unit behind it, as in " + base::shown(std::string(text) + " in")};
    if (!conversion(fraction.unit, "mm"))
        return Problem{"a fraction of what is no length: found " + base::shown(text) + "; write " +
                       base::shown(decimal + " " + fraction.unit)};
    return convert(fraction.value, fraction.unit, unit, words);
}

}  // namespace

std::variant<double, Problem> read_quantity(const GivenText& given, const std::string& unit, const UnitWords& words) {
    const std::string_view text = given.text;
    if (text.empty()) return Problem{"an empty value: expected a plain decimal" + in_unit(unit)};
    if (const auto fraction = read_fraction(text)) return of_fraction(*fraction, text, unit, words);
    if (text.ends_with('%') && is_plain_decimal(text.substr(0, text.size() - 1))) {
        const auto percent = read_decimal(text.substr(0, text.size() - 1));
        if (const auto* problem = std::get_if<Problem>(&percent)) return *problem;
        return convert(std::get<double>(percent), "%", unit, words);
    }
    const auto space = text.find(' ');
    const auto number = text.substr(0, space);
    if (!is_plain_decimal(number) || (space != std::string_view::npos && is_digit_behind(text, space)))
        return not_a_number(text, unit);
    if (space == std::string_view::npos) {
        if (given.quoted)
            return Problem{"a quoted number is a text: found " + base::shown(text) + "; write it without the quotes"};
        return read_decimal(number);
    }
    const auto value = read_decimal(number);
    if (const auto* problem = std::get_if<Problem>(&value)) return *problem;
    const auto written = text.substr(space + 1);
    if (!stands_alone(written)) return not_a_number(text, unit);
    return convert(std::get<double>(value), std::string(written), unit, words);
}

bool QuantityRange::holds(double value) const {
    return value >= low && value <= high && (!is_whole || std::floor(value) == value);
}

}  // namespace flutebook::fields
