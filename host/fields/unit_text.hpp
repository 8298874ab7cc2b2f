// The text of a unit, before its meaning is looked up: its words, its exponents, and what may not stand in it.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace flutebook::fields {

/// One word of a unit: "ft" with exponent "2" of "lb/ft2". The exponent is empty where there is none.
struct UnitWord {
    std::string name;
    std::string exponent;
};

/// ASCII letters alone.
[[nodiscard]] std::string in_lower_case(std::string_view text);

/// The words in turn. Words are letters, underscores, and everything beyond ASCII.
[[nodiscard]] std::vector<UnitWord> words_of(std::string_view unit);

/// Whether it holds a number that is not an exponent: `lb/1000 ft2`, `1/h`.
[[nodiscard]] bool has_number(std::string_view unit);

/// Whether it is spelled as a product of words, each with one digit as exponent at most, and of plain numbers. The
/// library reads much else, and seldom as it was meant: `1--1` as -1, `2**2` as 4, `1e308 1e308` as infinity.
[[nodiscard]] bool is_plain_unit(std::string_view unit);

/// Whether it counts from another origin: `s since 2000-01-01`, `m @ 5`.
[[nodiscard]] bool has_shift(std::string_view unit);

/// The same unit with a word replaced wherever it stands whole, raised digits and dots in ASCII.
[[nodiscard]] std::string with_word_replaced(std::string_view unit, std::string_view word, std::string_view by);

}  // namespace flutebook::fields
