// Conversions of units against published factors.
//
// NIST Special Publication 811, Guide for the Use of the International System of Units, Appendix B (definitions of
// pound, foot, inch and short ton, all exact): from memory; the factors below are computed from them.
#include <catch2/catch.hpp>

#include "host/fields/units.hpp"

using flutebook::fields::conversion;

namespace {

double converted(double value, const char* from, const char* to) {
    const auto result = conversion(from, to);
    REQUIRE(result.has_value());
    return (*result)(value);
}

}  // namespace

TEST_CASE("a pound per thousand square feet is 4.88242763638 g/m2") {
    // Computed: 0.45359237 kg / 92.90304 m2.
    CHECK(converted(1, "lb/MSF", "g/m2") == Approx(4.88242763638).epsilon(1e-11));
    CHECK(converted(1, "g/m2", "lb/MSF") == Approx(0.2048161436).epsilon(1e-9));
}

TEST_CASE("the liners of the United States by their metric grammage") {
    // Weights in lb/MSF from memory of the trade; metric values computed from the exact pound and foot.
    const std::pair<double, double> liners[] = {{23, 112.30}, {26, 126.94}, {30, 146.47}, {33, 161.12}, {35, 170.88},
                                                {36, 175.77}, {42, 205.06}, {56, 273.42}, {69, 336.89}, {90, 439.42}};
    for (const auto& [pounds, grams] : liners)
        CHECK(converted(pounds, "lb/MSF", "g/m2") == Approx(grams).margin(0.005));
}

TEST_CASE("metric liners in pounds, as an association's expert worked them") {
    // AICC, Ask Ralph, 3 January 2018 (seen): 230 and 140 g/m2 over 4.88 give 47.13 and 28.68; the exact factor gives
    // 47.108 and 28.674, so the trade's shortcut is 0.05 % off and no more.
    CHECK(converted(230, "g/m2", "lb/MSF") == Approx(47.108).margin(0.0005));
    CHECK(converted(140, "g/m2", "lb/MSF") == Approx(28.674).margin(0.0005));
    CHECK(converted(230, "g/m2", "lb/MSF") == Approx(47.13).epsilon(0.0006));
}

TEST_CASE("a thousand square feet is 92.90304 m2, and a tonne is 1.1023 short tons") {
    CHECK(converted(1, "MSF", "m2") == Approx(92.90304).epsilon(1e-12));
    CHECK(converted(1, "in", "mm") == Approx(25.4).epsilon(1e-12));
    CHECK(converted(1000, "m2", "MSF") == Approx(10.76391042).epsilon(1e-9));
    CHECK(converted(2000, "lb", "kg") == Approx(907.18474).epsilon(1e-12));
}

TEST_CASE("the dearer paper by the ton may be the cheaper one by its area") {
    // AICC, BoxScore, Paper 101: Basis Weight (seen): 42 lb at 530 $/ton costs 11.13 $/MSF, 35 lb at 555 $/ton 9.71.
    const auto per_msf = [](double dollars_per_short_ton, double pounds_per_msf) {
        const double per_kg = dollars_per_short_ton / converted(2000, "lb", "kg");
        return per_kg * converted(pounds_per_msf, "lb/MSF", "kg/m2") * converted(1, "MSF", "m2");
    };
    CHECK(per_msf(530, 42) == Approx(11.13).margin(0.005));
    CHECK(per_msf(555, 35) == Approx(9.7125).margin(0.00005));
}

TEST_CASE("energy: a kWh is 3600 kJ and a therm of 100,000 Btu is 29.3071 kWh") {
    // Btu (International Table) 1055.05585262 J: seen as such, and as 1055.056 J in NIST SP 811 as reproduced in an
    // extract of the CRC Handbook. The therm is computed from it.
    CHECK(converted(1, "kWh", "kJ") == Approx(3600).epsilon(1e-12));
    CHECK(converted(1e5, "Btu", "kWh") == Approx(29.3071).epsilon(1e-5));
}
