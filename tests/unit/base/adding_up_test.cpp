// Parts that still come to the whole when they are rounded.
#include "host/base/parts.hpp"

#include <rapidcheck.h>

#include <catch2/catch.hpp>
#include <cmath>
#include <numeric>

using namespace flutebook::base;

using Parts = std::vector<std::int64_t>;

TEST_CASE("what rounding leaves over goes to the part that lost most") {
    CHECK(parts_of(100, {33.333, 33.333, 33.334}, 0) == Parts{33, 33, 34});
    CHECK(parts_of(10000, {33.335, 33.335, 33.330}, 2) == Parts{3334, 3333, 3333});
    CHECK(parts_of(1, {0.5, 0.5}, 0) == Parts{1, 0});
    CHECK(parts_of(0, {}, 2).empty());
}

TEST_CASE(
    "a whole that was itself rounded down takes a unit from the part that lost least, and none goes below nothing") {
    CHECK(parts_of(4, {1.0, 2.0, 2.0, 0.0}, 0) == Parts{1, 2, 1, 0});
    CHECK(parts_of(0, {0.0, 0.0}, 0) == Parts{0, 0});
}

TEST_CASE("parts come to the whole and stay within two units of themselves, for any masses") {
    CHECK(rc::check("masses", [](const std::vector<std::uint32_t>& grams) {
        if (grams.empty()) return;
        std::vector<double> kg;
        for (const std::uint32_t gram : grams) kg.push_back(gram / 1000.0);
        const std::int64_t whole = in_units(std::accumulate(kg.begin(), kg.end(), 0.0), 2);
        const Parts parts = parts_of(whole, kg, 2);
        RC_ASSERT(std::accumulate(parts.begin(), parts.end(), std::int64_t{0}) == whole);
        for (std::size_t i = 0; i < kg.size(); ++i) {
            RC_ASSERT(parts[i] >= 0);
            RC_ASSERT(std::abs(from_units(parts[i], 2) - kg[i]) < 0.02);
        }
    }));
}
