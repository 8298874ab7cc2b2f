// One number as a person writes it in a file: bare, in the unit that the key is known by, or a text with its own unit;
// and the range in which it must lie. Bounds are closed: one that the number must not reach is the next double beside
// it.
#pragma once

#include <limits>
#include <string>
#include <variant>

#include "host/base/place.hpp"
#include "host/fields/unit_words.hpp"

namespace flutebook::fields {

/// A number with or without a unit, or a word.
struct GivenText {
    std::string text;     // without control characters
    bool quoted = false;  // a quoted text is never a bare number
    base::Place place;
};

/// From the least to the most.
struct Span {
    double low, high;
};

/// `what is wrong, what was expected`, without the place.
struct Problem {
    std::string text;
};

/// The number of `given` in `unit`. Takes plain decimals only: no 010, nan, inf, 0x10, 1_000 or 1,5; with a unit behind
/// a space, `20%`, and lengths with a fraction, `15 1/4 in`. In a text with a unit `words` say what the currency's
/// code,
/// `$` and `ton` mean.
[[nodiscard]] std::variant<double, Problem> read_quantity(const GivenText& given, const std::string& unit,
                                                          const UnitWords& words);

struct QuantityRange {
    double low, high;
    bool is_whole;
    const char* expected;  // as a person reads it, after "expected"

    /// False for NaN.
    [[nodiscard]] bool holds(double value) const;
};

namespace range {

/// Beyond any plant; sums of such numbers are still finite.
inline constexpr double largest = 1e15;
inline constexpr double above_0 = std::numeric_limits<double>::denorm_min();
inline constexpr double below_1 = 1 - std::numeric_limits<double>::epsilon() / 2;

inline constexpr QuantityRange share{0, below_1, false, "a share from 0 to below 1"};
inline constexpr QuantityRange moisture{0, 0.5, false, "a share from 0 to 0.5"};
inline constexpr QuantityRange take_up{1, 2, false, "a take-up from 1 to 2"};
inline constexpr QuantityRange positive{above_0, largest, false, "a number above 0"};
inline constexpr QuantityRange not_negative{0, largest, false, "a number not below 0"};
inline constexpr QuantityRange count{0, largest, true, "a whole number not below 0"};
inline constexpr QuantityRange count_from_1{1, largest, true, "a whole number not below 1"};
inline constexpr QuantityRange ordered{1, 10000000, true, "a whole number from 1 to 10000000"};

}  // namespace range

}  // namespace flutebook::fields
