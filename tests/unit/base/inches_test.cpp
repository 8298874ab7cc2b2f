// Inches as they are read off a ruler.
#include "host/base/inches.hpp"

#include <catch2/catch.hpp>

#include <limits>

using namespace flutebook::base;

TEST_CASE("whole sixteenths of an inch are a whole number and the shortest fraction") {
    CHECK(exact_inches(15.25) == "15 1/4");
    CHECK(exact_inches(80) == "80");
    CHECK(exact_inches(0.375) == "3/8");
    CHECK(exact_inches(2 + 15.0 / 16) == "2 15/16");
    CHECK(exact_inches(0) == "0");
    CHECK(exact_inches(-1.5) == "-1 1/2");
    CHECK(exact_inches(-0.0625) == "-1/16");
    CHECK(exact_inches(1234.5) == "1234 1/2");
}

TEST_CASE("every sixteenth that was converted from mm is found again") {
    for (int sixteenths = 0; sixteenths <= 16 * 120; ++sixteenths) {
        const double mm = sixteenths * (mm_of_inch / 16);
        const std::string text = exact_inches(mm / mm_of_inch);
        CAPTURE(sixteenths);
        CHECK(text.find('.') == std::string::npos);
        CHECK(inches_to_sixteenths(mm / mm_of_inch) == text);
    }
}

TEST_CASE("a length between two sixteenths is a decimal, or rounded and marked so") {
    CHECK(exact_inches(2050 / mm_of_inch) == "80.709");
    CHECK(inches_to_sixteenths(2050 / mm_of_inch) == "~80 11/16");
    CHECK(inches_to_sixteenths(1.99) == "~2");
    CHECK(inches_to_sixteenths(0.99) == "~1");
    CHECK(inches_to_sixteenths(-1.27) == "~-1 1/4");
}

TEST_CASE("what is less than a thirty-second of an inch is not shown as nothing") {
    CHECK(inches_to_sixteenths(0.02) == "0.02");
    CHECK(inches_to_sixteenths(0.04) == "~1/16");
    CHECK(inches_to_sixteenths(-0.02) == "-0.02");
    CHECK(exact_inches(-1e-9) == "0");
}

TEST_CASE("a length that is not on a ruler's scale is rounded and marked") {
    CHECK(exact_inches(1e12) == "1000000000000");
    CHECK(inches_to_sixteenths(std::numeric_limits<double>::infinity()) == "inf");
    CHECK(inches_to_sixteenths(std::numeric_limits<double>::quiet_NaN()) == "nan");
}
