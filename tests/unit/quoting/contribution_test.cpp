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

TEST_CASE(
    "a price breaks even at the least quantity that earns the per-unit cost of each and the per-run cost of all") {
    const auto euros = [](double amount) { return *Money::rounded(amount, 4); };
    for (const double price : {590.0, 412.37, 999.99})
        for (const double per_run : {0.01, 80.0, 1234.5678})
            for (const std::int64_t quantity : {7, 500, 100'000}) {
                const Money per_unit = euros(0.3 * static_cast<double>(quantity));
                const auto least = quoting::break_even(euros(price), per_unit, euros(per_run), quantity);
                REQUIRE(least);
                const double left = price / 1000 - per_unit.to_double() / static_cast<double>(quantity);
                CHECK(*least * left >= per_run - 1e-6);
                CHECK(((*least - 1) * left < per_run || *least == 1));
            }
}

TEST_CASE("a price that does not pay the per-unit cost breaks even nowhere, and one without a per-run cost at once") {
    CHECK_FALSE(quoting::break_even(ten_thousandths(3'000'000), ten_thousandths(3'000'000), ten_thousandths(1), 1000));
    CHECK_FALSE(quoting::break_even(ten_thousandths(2'000'000), ten_thousandths(3'000'000), ten_thousandths(1), 1000));
    CHECK(quoting::break_even(ten_thousandths(4'000'000), ten_thousandths(3'000'000), Money(), 1000) == 1.0);
    CHECK(quoting::break_even(ten_thousandths(4'000'000), ten_thousandths(3'000'000), ten_thousandths(10'000), 1000) ==
          10.0);
}
