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

// What a plant of the United States writes in its files, against the factors of NIST Special Publication 811 (2008),
// Appendix B.8. All factors from memory; those marked exact there are tried to 1e-12, others to their last digit.
namespace {

struct PublishedFactor {
    const char* written;
    const char* key;  // the unit of the key it stands at
    double factor;
    double tolerance;  // relative
};

constexpr double exact = 1e-12;
constexpr double seven_digits = 5e-7;

}  // namespace

TEST_CASE("lengths, areas and speeds of us files convert by the factors of NIST SP 811") {
    // inch 2.54 E-02 m, foot 3.048 E-01 m, mile 1.609344 E+03 m, square inch 6.4516 E-04 m2, square foot
    // 9.290304 E-02 m2, foot per minute 5.08 E-03 m/s: all exact. Cubic foot 2.831685 E-02 m3.
    const PublishedFactor factors[] = {{"in", "mm", 25.4, exact},
                                       {"in", "m", 0.0254, exact},
                                       {"mil", "mm", 0.0254, exact},
                                       {"ft", "m", 0.3048, exact},
                                       {"ft", "mm", 304.8, exact},
                                       {"mi", "km", 1.609344, exact},
                                       {"mile", "km", 1.609344, exact},
                                       {"in2", "m2", 0.00064516, exact},
                                       {"ft2", "m2", 0.09290304, exact},
                                       {"MSF", "m2", 92.90304, exact},
                                       {"ft/min", "m/s", 0.00508, exact},
                                       {"ft/min", "m/min", 0.3048, exact},
                                       {"ft3", "m3", 0.02831685, seven_digits}};
    for (const PublishedFactor& item : factors) {
        CAPTURE(item.written, item.key);
        CHECK(converted(1, item.written, item.key) == Approx(item.factor).epsilon(item.tolerance));
    }
}

TEST_CASE("masses, and masses over an area, a length or a volume, convert by the factors of NIST SP 811") {
    // pound 4.5359237 E-01 kg: exact. Short ton 9.071847 E+02 kg, pound per square foot 4.882428 kg/m2, pound per foot
    // 1.488164 kg/m, pound per cubic foot 1.601846 E+01 kg/m3.
    const PublishedFactor factors[] = {{"lb", "kg", 0.45359237, exact},
                                       {"lbs", "kg", 0.45359237, exact},
                                       {"short_ton", "kg", 2000 * 0.45359237, exact},
                                       {"short_ton", "kg", 907.1847, seven_digits},
                                       {"lb/ft2", "kg/m2", 4.882428, seven_digits},
                                       {"lb/MSF", "g/m2", 4.882428, seven_digits},
                                       {"lb/MSF", "g/m2", 453.59237 / 92.90304, exact},
                                       {"lb/ft", "g/m", 1488.164, seven_digits},
                                       {"lb/ft3", "kg/m3", 16.01846, seven_digits}};
    for (const PublishedFactor& item : factors) {
        CAPTURE(item.written, item.key);
        CHECK(converted(1, item.written, item.key) == Approx(item.factor).epsilon(item.tolerance));
    }
}

TEST_CASE("heat and power of us files convert by the factors of NIST SP 811") {
    // British thermal unit (IT) 1.055056 E+03 J; Btu (IT) per pound 2.326 E+03 J/kg and per pound and degree Fahrenheit
    // 4.1868 E+03 J/(kg K): exact; therm (U.S.) 1.054804 E+08 J: exact; horsepower (550 ft lbf/s) 7.456999 E+02 W.
    const PublishedFactor factors[] = {{"Btu", "kJ", 1.055056, seven_digits}, {"MMBtu", "MJ", 1055.056, seven_digits},
                                       {"Btu/lb", "kJ/kg", 2.326, exact},     {"Btu/lb/degF", "kJ/kg/K", 4.1868, exact},
                                       {"therm", "MJ", 105.4804, exact},      {"hp", "kW", 0.7456999, seven_digits}};
    for (const PublishedFactor& item : factors) {
        CAPTURE(item.written, item.key);
        CHECK(converted(1, item.written, item.key) == Approx(item.factor).epsilon(item.tolerance));
    }
    CHECK(converted(212, "degF", "degC") == Approx(100).epsilon(exact));
    CHECK(converted(68, "degF", "degC") == Approx(20).epsilon(exact));
}

TEST_CASE("a price over a us unit is the price over the metric one divided by its factor") {
    CHECK(converted(530, "money/short_ton", "money/t") == Approx(530 / 0.90718474).epsilon(exact));
    CHECK(converted(1, "money/lb", "money/kg") == Approx(1 / 0.45359237).epsilon(exact));
    CHECK(converted(1, "money/MSF", "money/m2") == Approx(1 / 92.90304).epsilon(exact));
    CHECK(converted(1, "money/in2", "money/m2") == Approx(1 / 0.00064516).epsilon(exact));
    CHECK(converted(1, "money/ft", "money/m") == Approx(1 / 0.3048).epsilon(exact));
    CHECK(converted(1, "money/short_ton/mile", "money/t/km") == Approx(1 / (0.90718474 * 1.609344)).epsilon(exact));
}
