// How close a model's number must come to one that was worked out by hand.
#pragma once

#include <catch2/catch.hpp>

namespace flutebook::fixture {

/// Twelve digits.
inline Approx near(double value) {
    return Approx(value).epsilon(1e-12);
}

/// Twelve digits; where `value` is 0, also what rounding leaves of a difference.
inline Approx near_or_zero(double value) {
    return Approx(value).epsilon(1e-12).margin(1e-12);
}

}  // namespace flutebook::fixture
