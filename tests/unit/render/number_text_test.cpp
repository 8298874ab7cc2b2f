// Numbers as they stand on the page.
#include "host/render/number_text.hpp"

#include <rapidcheck.h>

#include <catch2/catch.hpp>
#include <cmath>
#include <cstdint>
#include <limits>
#include <string>

using namespace flutebook;
using namespace flutebook::render;

TEST_CASE("thousands stand apart by a space, before the point alone") {
    CHECK(number_text(0, 0) == "0");
    CHECK(number_text(999, 0) == "999");
    CHECK(number_text(1000, 0) == "1 000");
    CHECK(number_text(1234567.891, 3) == "1 234 567.891");
    CHECK(number_text(123456, 2) == "123 456.00");
    CHECK(number_text(-1234.5, 2) == "-1 234.50");
    CHECK(number_text(-123456, 0) == "-123 456");
}

TEST_CASE("a plant's comma stands before the decimals of every form, and nowhere else") {
    show_decimals_with(base::DecimalMark::comma);
    const std::string shown =
        number_text(1234567.891, 3) + "; " + brief_number(0.668, 4) + "; " + significant_number(12.3456, 4, 4) + "; " +
        money_text(Money::of_ten_thousandths(12345678)) + "; " + coin_text(Money::of_ten_thousandths(12345600), 2) +
        "; " + coin_text(Money::of_ten_thousandths(50000), 0) + "; " + percent_text(0.1604, 2) + "; " +
        brief_number(1.5e-9, 2) + "; " + with_shown_mark("344.5 mm");
    show_decimals_with(base::DecimalMark::point);
    CHECK(shown == "1 234 567,891; 0,668; 12,35; 1 234,5678; 1 234,56; 5; 16,04 %; 1,5e-09; 344,5 mm");
}

TEST_CASE("nothing has no sign") {
    CHECK(number_text(-0.0, 2) == "0.00");
    CHECK(number_text(-0.004, 2) == "0.00");
    CHECK(money_text(Money{}) == "0.0000");
    CHECK(brief_number(-0.0, 3) == "0");
}

TEST_CASE("what is no number is not dressed up as one") {
    CHECK(number_text(std::numeric_limits<double>::quiet_NaN(), 2) == "nan");
    CHECK(brief_number(std::numeric_limits<double>::infinity(), 2) == "inf");
    CHECK(significant_number(-std::numeric_limits<double>::infinity(), 6, 6) == "-inf");
}

TEST_CASE("a brief number has no zeros at its end, and is never nothing by rounding") {
    CHECK(brief_number(0.668, 6) == "0.668");
    CHECK(brief_number(240, 6) == "240");
    CHECK(brief_number(1500, 0) == "1 500");
    CHECK(brief_number(0.1 + 0.2, 6) == "0.3");
    CHECK(brief_number(0.00000012, 4) == "1.2e-07");
}

TEST_CASE("significant digits count from the first, and those before the point are all there") {
    CHECK(significant_number(75.6225812, 6, 5) == "75.6226");
    CHECK(significant_number(0.0171131, 6, 5) == "0.01711");
    CHECK(significant_number(1234567.8, 6, 5) == "1 234 568");
    CHECK(significant_number(9.9999999, 6, 5) == "10");
    CHECK(significant_number(-52.385949, 6, 5) == "-52.3859");
}

TEST_CASE("money shows all four places that are kept") {
    CHECK(money_text(Money::of_ten_thousandths(12345678)) == "1 234.5678");
    CHECK(money_text(Money::of_ten_thousandths(-5)) == "-0.0005");
    CHECK(money_text(Money::of_ten_thousandths(std::numeric_limits<std::int64_t>::min())) ==
          "-922 337 203 685 477.5808");
}

TEST_CASE("a price shows the places of its coin, and more only where it is no whole coin") {
    const Money price = Money::of_ten_thousandths(7984600);
    CHECK(coin_text(price, 2) == "798.46");
    CHECK(coin_text(Money::of_ten_thousandths(7980000), 0) == "798");
    CHECK(coin_text(Money::of_ten_thousandths(7984560), 3) == "798.456");
    CHECK(coin_text(price, 4) == "798.4600");
    CHECK(coin_text(price, 0) == "798.4600");
}

TEST_CASE("a share is told in percent") {
    CHECK(percent_text(0.0873469, 2) == "8.73 %");
    CHECK(percent_text(1, 0) == "100 %");
}

TEST_CASE("money on the page is the money that was kept, for any amount") {
    CHECK(rc::check("digits are kept", [](std::int64_t count) {
        std::string digits;
        for (const char sign : money_text(Money::of_ten_thousandths(count)))
            if (sign != ' ' && sign != '.') digits += sign;
        RC_ASSERT(std::stoll(digits) == count);
    }));
}
