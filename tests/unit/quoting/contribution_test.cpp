// What a thousand boxes contribute: their price less what grows with the quantity.
#include <catch2/catch.hpp>

#include "host/quoting/cost_sheet.hpp"

using namespace flutebook;
using quoting::contribution;

namespace {

Money ten_thousandths(std::int64_t count) {
    return Money::of_ten_thousandths(count);
}

}  // namespace

TEST_CASE("a contribution is the price less the unrounded per-unit cost, rounded once") {
    // A thousand of 2000 cost 345.67895: rounded first that is 345.6790, and leaves 0.0001 less.
    CHECK(contribution(ten_thousandths(5001200), ten_thousandths(6913579), 2000) == ten_thousandths(1544411));
    CHECK(contribution(ten_thousandths(5001200), ten_thousandths(6913578), 2000) == ten_thousandths(1544411));
    CHECK(contribution(ten_thousandths(5001200), ten_thousandths(6913580), 2000) == ten_thousandths(1544410));
}

TEST_CASE("a contribution that lies half-way is rounded away from zero on both sides") {
    CHECK(contribution(ten_thousandths(1), ten_thousandths(1), 2000) == ten_thousandths(1));
    CHECK(contribution(ten_thousandths(0), ten_thousandths(1), 2000) == ten_thousandths(-1));
    CHECK(contribution(ten_thousandths(0), ten_thousandths(-1), 2000) == ten_thousandths(1));
}

TEST_CASE("a contribution is exact where doubles would not be") {
    // A price of 9e10 less a cost of a thousand of 9e10 less half of 1/10000.
    const std::int64_t most = 900'000'000'000'000;
    CHECK(contribution(ten_thousandths(most), ten_thousandths(2 * most - 1), 2000) == ten_thousandths(1));
    CHECK(contribution(ten_thousandths(most), ten_thousandths(2 * most + 1), 2000) == ten_thousandths(-1));
}
