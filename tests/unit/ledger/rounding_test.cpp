// Rounding half away from zero gives the integer of std::llround, for ties, their neighbours, and numbers of any size.
#include <catch2/catch.hpp>

#include "tests/support/rounding_against_library.hpp"

using namespace flutebook::fixture;

TEST_CASE("every tie below two to the twentieth, and its neighbours, round as the library rounds them") {
    CHECK(first_wrong_tie(1 << 20) == std::nullopt);
}

TEST_CASE("powers of two, their halves and their neighbours round as the library rounds them, up to the largest") {
    CHECK(first_wrong_power() == std::nullopt);
}

TEST_CASE("a million random numbers of all sizes round as the library rounds them") {
    CHECK(first_wrong_random(1'000'000, 1) == std::nullopt);
}
