// A quantity that is a whole number of its smallest unit, so that sums are exact in any order. Each quantity is a type
// of its own: grams are not added to money.
//
// Rounding to a whole number, half away from zero: the integer that std::llround gives, without its call through the
// library. A quote rounds every line of every candidate, so the call was a third of its time.
#pragma once

#include <cmath>
#include <compare>
#include <cstdint>

namespace flutebook {

/// The arithmetic of `Quantity`, which inherits from this: `class Grams : public Counted<Grams>`.
template <typename Quantity>
class Counted {
public:
    constexpr Quantity& operator+=(Quantity other) {
        count_ += other.count_;
        return static_cast<Quantity&>(*this);
    }
    friend constexpr Quantity operator+(Quantity left, Quantity right) { return left += right; }
    friend constexpr Quantity operator-(Quantity left, Quantity right) { return Quantity(left.count_ - right.count_); }
    friend constexpr Quantity operator-(Quantity only) { return Quantity(-only.count_); }
    friend constexpr auto operator<=>(Counted, Counted) = default;

protected:
    constexpr Counted() = default;
    explicit constexpr Counted(std::int64_t count) : count_(count) {}

    std::int64_t count_ = 0;
};

/// `value` is finite and |value| < 2^63. The remainder is exact: below 2^53 the whole part is a double, and above 2^52
/// there is no remainder.
[[nodiscard]] constexpr std::int64_t rounded_half_away(double value) {
    const auto whole = static_cast<std::int64_t>(value);  // towards zero
    const double remainder = value - static_cast<double>(whole);
    return whole + static_cast<std::int64_t>(remainder >= 0.5) - static_cast<std::int64_t>(remainder <= -0.5);
}

/// The same whole number as a double, for |value| < 2^51 in the rounding mode to nearest: without a branch, and in
/// operations that a compiler applies to whole vectors. A double from 2^52 to 2^53 has no fraction, so adding 2^52
/// rounds the magnitude half to even; a tie that went towards zero is then moved away from it.
[[nodiscard]] inline double whole_half_away(double value) {
    constexpr double shift = 0x1p52;
    const double magnitude = std::fabs(value);
    const double whole = magnitude + shift - shift;
    const double remainder = magnitude - whole;  // exact
    return std::copysign(whole + (remainder == 0.5 ? 1.0 : 0.0), value);
}

}  // namespace flutebook
