// Our own rounding beside std::llround: each function answers with the first number that the two round differently.
#pragma once

#include <cmath>
#include <cstdint>
#include <optional>
#include <random>

#include "ledger/values/counted.hpp"

namespace flutebook::fixture {

inline bool rounds_as_the_library(double value) {
    const auto both = [](double number) {
        const auto nearest = static_cast<std::int64_t>(std::llround(number));
        return rounded_half_away(number) == nearest &&
               (std::fabs(number) >= 0x1p51 || whole_half_away(number) == static_cast<double>(nearest));
    };
    return both(value) && both(-value);
}

inline bool rounds_with_its_neighbours(double value) {
    return rounds_as_the_library(value) && rounds_as_the_library(std::nextafter(value, 0)) &&
           rounds_as_the_library(std::nextafter(value, 1e300));
}

/// k + 0.5 for k from 0 to `count` - 1, each with the doubles next to it.
inline std::optional<double> first_wrong_tie(std::int64_t count) {
    for (std::int64_t k = 0; k < count; ++k) {
        const double tie = static_cast<double>(k) + 0.5;
        if (!rounds_with_its_neighbours(tie)) return tie;
    }
    return std::nullopt;
}

/// Every power of two from the smallest double to 2^62, alone and with a half and a whole added or taken.
inline std::optional<double> first_wrong_power() {
    for (int exponent = -1074; exponent <= 62; ++exponent) {
        const double power = std::ldexp(1.0, exponent);
        for (const double value : {power, power + 0.5, power - 0.5, power + 1, power - 1})
            if (!rounds_with_its_neighbours(std::fabs(value))) return value;
    }
    return std::nullopt;
}

/// Random numbers whose sizes are spread evenly from 2^-12 to 2^63; every other one is moved to a tie.
inline std::optional<double> first_wrong_random(std::int64_t count, std::uint64_t seed) {
    std::mt19937_64 bits(seed);
    for (std::int64_t i = 0; i < count; ++i) {
        const std::uint64_t drawn = bits();
        const double share = 1 + static_cast<double>(drawn >> 12U) * 0x1p-52;
        double value = std::ldexp(share, static_cast<int>(drawn & 0xFFFU) % 75 - 12);
        if (i % 2 == 0) value = std::floor(value) + 0.5;
        if (value < 0x1p63 && !rounds_as_the_library(value)) return value;
    }
    return std::nullopt;
}

}  // namespace flutebook::fixture
