// Numbers as people read them: thousands are parted by a space, a point or a comma stands before the decimals, and zero
// has no minus. Every number that people are shown is written here; documents and lists write their own, with a point.
#pragma once

#include <string>

#include "host/base/decimal_mark.hpp"
#include "ledger/values/money.hpp"

namespace flutebook::render {

/// Significant digits of a number that a reader may multiply.
constexpr int shown_digits = 6;

/// What stands before the decimals of every number from here on; a point until it is said. A program shows numbers to
/// the people of one plant: to be called once, before any text is made and any thread begins.
void show_decimals_with(base::DecimalMark mark);

/// A number that was written with a point elsewhere, as people are shown it: "344.5 mm" or "344,5 mm".
[[nodiscard]] std::string with_shown_mark(std::string number);

/// "1 234.50": exactly `decimals` places.
[[nodiscard]] std::string number_text(double value, int decimals);

/// "0.668", "240": at most `most_decimals` places, no zeros at the end. A value that is not zero never reads as
/// zero: what would round to 0 keeps its first two digits.
[[nodiscard]] std::string brief_number(double value, int most_decimals);

/// As brief_number(), with as many places as `digits` significant digits take: a number that a reader may multiply.
[[nodiscard]] std::string significant_number(double value, int digits, int most_decimals);

/// "1 234.5000": all four places that are kept, so that what is printed adds up.
[[nodiscard]] std::string money_text(Money amount);

/// An amount that was rounded to the currency's coin, with its places; with all four where it is no whole coin.
[[nodiscard]] std::string coin_text(Money amount, int minor_units);

/// "16.04 %".
[[nodiscard]] std::string percent_text(double share, int decimals);

}  // namespace flutebook::render
