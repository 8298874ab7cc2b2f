#include "host/fields/written_number.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cstdlib>
#include <limits>

#include "host/base/characters.hpp"
#include "host/base/quoted_text.hpp"

namespace flutebook::fields {

namespace {

// Takes the digits at the front of a text.
std::string_view take_digits(std::string_view& text) {
    const auto end = std::find_if_not(text.begin(), text.end(), base::is_digit);
    const std::string_view digits = text.substr(0, static_cast<std::size_t>(end - text.begin()));
    text.remove_prefix(digits.size());
    return digits;
}

bool take(std::string_view& text, std::string_view sign) {
    if (!text.starts_with(sign)) return false;
    text.remove_prefix(sign.size());
    return true;
}

double number_of(std::string_view digits) {
    return std::strtod(std::string(digits).c_str(), nullptr);
}

// Below 1, in halves to sixty-fourths.
bool is_of_a_rule(std::string_view above, std::string_view below) {
    static constexpr std::array<std::string_view, 6> parts = {"2", "4", "8", "16", "32", "64"};
    return std::find(parts.begin(), parts.end(), below) != parts.end() && above.front() != '0' && above.size() <= 2 &&
           number_of(above) < number_of(below);
}

// What people put between thousands: a space of any width, an apostrophe, an underscore.
bool take_mark_of_thousands(std::string_view& text) {
    static constexpr std::array<std::string_view, 7> marks = {
        " ", "'", "_", "\xC2\xA0", "\xE2\x80\xAF", "\xE2\x80\x89", "\xE2\x80\x99"};
    return std::any_of(marks.begin(), marks.end(), [&](std::string_view mark) { return take(text, mark); });
}

// "1000" of `1 000`; empty where the text does not begin with thousands that are set apart.
std::string take_thousands(std::string_view& text) {
    std::string_view rest = text;
    const std::string_view first = take_digits(rest);
    if (first.empty() || first.size() > 3 || first.front() == '0') return "";
    std::string result(first);
    while (true) {
        std::string_view behind = rest;
        if (!take_mark_of_thousands(behind)) break;
        const std::string_view group = take_digits(behind);
        if (group.size() != 3) break;
        result += group;
        rest = behind;
    }
    if (result.size() == first.size()) return "";
    text = rest;
    return result;
}

// What stands behind a number: its decimals, and a unit behind a space.
bool is_end_of_number(std::string_view rest) {
    if (take(rest, ".") && take_digits(rest).empty()) return false;
    return rest.empty() || (rest.front() == ' ' && rest.size() > 1 && !base::is_digit(rest[1]));
}

std::string with_point(std::string_view text) {
    std::string_view rest = text;
    const std::string_view whole = take_digits(rest);
    if (whole.empty() || !take(rest, ",")) return "";
    const std::string_view decimals = take_digits(rest);
    if (decimals.empty() || !is_end_of_number(rest)) return "";
    const bool may_be_thousands = decimals.size() == 3 && whole.size() <= 3 && whole.front() != '0';
    const std::string joined = may_be_thousands ? fmt::format("{}{}{} or ", whole, decimals, rest) : "";
    return fmt::format("; write {}{}.{}{}", joined, whole, decimals, rest);
}

std::string with_space(std::string_view text) {
    std::string_view rest = text;
    const std::string_view whole = take_digits(rest);
    if (take(rest, ".") && take_digits(rest).empty()) return "";
    const std::string_view number = text.substr(0, text.size() - rest.size());
    const auto is_letter = [](char sign) { return (sign >= 'a' && sign <= 'z') || (sign >= 'A' && sign <= 'Z'); };
    if (whole.empty() || rest.empty() || !std::all_of(rest.begin(), rest.end(), is_letter)) return "";
    return fmt::format("; write {} {}", number, rest);
}

}  // namespace

std::optional<WrittenFraction> read_fraction(std::string_view text) {
    std::string_view rest = text;
    std::string_view whole;
    std::string_view above = take_digits(rest);
    if (take(rest, " ")) {
        if (above.size() > 1 && above.front() == '0') return std::nullopt;  // 015 may be thirteen
        whole = above;
        above = take_digits(rest);
        if (whole.empty()) return std::nullopt;
    }
    if (above.empty() || !take(rest, "/")) return std::nullopt;
    const std::string_view below = take_digits(rest);
    if (below.empty() || (!rest.empty() && !take(rest, " "))) return std::nullopt;
    WrittenFraction result{std::numeric_limits<double>::quiet_NaN(), fmt::format("{}/{}", above, below),
                           std::string(rest)};
    if (is_of_a_rule(above, below)) result.value = number_of(whole) + number_of(above) / number_of(below);
    return result;
}

std::string number_meant(std::string_view text) {
    constexpr std::size_t longest = 40;
    if (text.size() > longest) return "";
    std::string_view rest = text;
    const std::string joined = take_thousands(rest);
    if (!joined.empty() && is_end_of_number(rest)) return fmt::format("; write {}{}", joined, rest);
    const std::string pointed = with_point(text);
    return pointed.empty() ? with_space(text) : pointed;
}

}  // namespace flutebook::fields
