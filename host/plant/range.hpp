// What a number in a file may be. Bounds are closed: one that the number must not reach is the next double beside it.
#pragma once

#include <limits>

namespace flutebook::plant {

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
}  // namespace flutebook::plant
