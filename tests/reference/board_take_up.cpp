// Take-up against a flute that is a pure sine: of height h (peak to trough) and pitch t its length is
// (2/pi) sqrt(1 + k2) E(k2 / (1 + k2)) of the pitch, k = pi h / t, E the complete elliptic integral of the second kind
// with the parameter m. Computed, here by Boost.Math and by adding up the curve's length, which agree.
//
// Published beside it, h and t in mm:
//  - heights and pitches of A, B, C, E: GDV Transport Information Service, "Wellen und Wellengrößen", after DIN 55468
//    (older edition). Seen.
//  - B 1.329 and C 1.442: ecoinvent 3.10, "corrugated board box production", dataset 11632, general comment. Seen.
//  - take-up about 0.8 + 1.33 h/t: H. J. Tenzer, Leitfaden der Papierverarbeitungstechnik, 1989, as cited in the
//    packaging training wiki of mediencommunity.de, section 2.2.4. Seen at second hand.
//  - bands A 1.48-1.56, B 1.27-1.36, C 1.40-1.48, E 1.15-1.27: seen (the above, and the AICC's column "Ask Ralph" of
//    6 March 2018: C 1.43) and, for their ends, from memory.
// A flute off the machine is no sine: this is for plausibility, and every plant gives its own take-up.
#include <catch2/catch.hpp>

#include <array>
#include <boost/math/constants/constants.hpp>
#include <boost/math/quadrature/trapezoidal.hpp>
#include <boost/math/special_functions/ellint_2.hpp>
#include <cmath>
#include <stdexcept>
#include <string>

#include "host/plant/plant.hpp"

using namespace flutebook;

namespace {

constexpr double pi = boost::math::constants::pi<double>();

double sine_take_up(double height_mm, double pitch_mm) {
    const double k = pi * height_mm / pitch_mm;
    // Boost takes the modulus, the root of the parameter.
    return 2 / pi * std::sqrt(1 + k * k) * boost::math::ellint_2(std::sqrt(k * k / (1 + k * k)));
}

double added_up_take_up(double height_mm, double pitch_mm) {
    const double k = pi * height_mm / pitch_mm;
    const auto slope_length = [&](double angle) { return std::sqrt(1 + std::pow(k * std::cos(angle), 2)); };
    return boost::math::quadrature::trapezoidal(slope_length, 0.0, 2 * pi, 1e-14) / (2 * pi);
}

double tenzer_take_up(double height_mm, double pitch_mm) {
    return 0.8 + 1.33 * height_mm / pitch_mm;
}

// A class of flute: published height and pitch, and the band of published take-ups.
struct FluteClass {
    const char* code;
    plant::Span height_mm, pitch_mm, take_up;
};

const std::array<FluteClass, 4> classes = {{{"A", {4.0, 4.9}, {8.0, 9.5}, {1.48, 1.56}},
                                            {"B", {2.2, 3.0}, {5.5, 6.5}, {1.27, 1.36}},
                                            {"C", {3.2, 4.0}, {6.8, 8.0}, {1.40, 1.48}},
                                            {"E", {1.0, 1.8}, {3.0, 3.5}, {1.15, 1.27}}}};

const FluteClass& class_of(const std::string& code) {
    for (const FluteClass& flute : classes)
        if (flute.code == code) return flute;
    throw std::out_of_range("no published class " + code);
}

double middle(const plant::Span& span) {
    return (span.low + span.high) / 2;
}

double mid_class_sine(const std::string& code) {
    return sine_take_up(middle(class_of(code).height_mm), middle(class_of(code).pitch_mm));
}

const std::vector<plant::Flute>& demo_flutes() {
    static const plant::Plant plant = plant::read_plant(FLUTEBOOK_SOURCE_DIR "/config/demo");
    return plant.flutes;
}

}  // namespace

TEST_CASE("a sine flute of height 3.6 and pitch 7.8 takes up 1.4070492050697") {
    REQUIRE(sine_take_up(3.6, 7.8) == Approx(1.4070492050697).epsilon(1e-13));
}

TEST_CASE("the elliptic integral is the length of the curve added up") {
    for (const double height : {0.5, 1.2, 2.5, 3.6, 4.8}) {
        CAPTURE(height);
        REQUIRE(sine_take_up(height, 7.8) == Approx(added_up_take_up(height, 7.8)).epsilon(1e-12));
    }
}

TEST_CASE("a sine flute takes up what the table by height over pitch says") {
    const std::array<std::array<double, 2>, 6> table = {
        {{0.1, 1.0242}, {0.2, 1.0924}, {0.3, 1.1945}, {0.4, 1.3207}, {0.5, 1.4637}, {0.6, 1.6186}}};
    for (const auto& [ratio, take_up] : table) REQUIRE(sine_take_up(ratio, 1) == Approx(take_up).margin(5e-5));
}

TEST_CASE("Tenzer's formula keeps within 2.5 % of the sine flute from 0.2 to 0.6 of height over pitch") {
    for (int hundredths = 20; hundredths <= 60; ++hundredths) {
        const double ratio = hundredths / 100.0;
        REQUIRE(tenzer_take_up(ratio, 1) == Approx(sine_take_up(ratio, 1)).epsilon(0.025));
    }
}

TEST_CASE("the sine flute in the middle of class C takes up what a C plant reports, within 1 %") {
    REQUIRE(mid_class_sine("C") == Approx(1.442).epsilon(0.01));
}

TEST_CASE("the sine flute in the middle of class B takes up what a B plant reports, within 5 %") {
    REQUIRE(mid_class_sine("B") == Approx(1.329).epsilon(0.05));
}

TEST_CASE("the sine flute in the middle of every class lies within 8 % of the published band") {
    for (const FluteClass& flute : classes) {
        CAPTURE(flute.code);
        REQUIRE(mid_class_sine(flute.code) > flute.take_up.low * 0.92);
        REQUIRE(mid_class_sine(flute.code) < flute.take_up.high * 1.08);
    }
}

TEST_CASE("the demo plant's flutes take up what is published for their class") {
    for (const plant::Flute& flute : demo_flutes()) {
        CAPTURE(flute.code);
        REQUIRE(flute.take_up >= class_of(flute.code).take_up.low);
        REQUIRE(flute.take_up <= class_of(flute.code).take_up.high);
    }
}

TEST_CASE("the demo plant's flutes take up what a sine of their own height would, within 8 %") {
    // The pitch is not in the plant's files: that of the class, from the widest to the narrowest.
    for (const plant::Flute& flute : demo_flutes()) {
        CAPTURE(flute.code);
        const plant::Span pitch_mm = class_of(flute.code).pitch_mm;
        REQUIRE(flute.take_up > sine_take_up(flute.height_mm, pitch_mm.high) * 0.92);
        REQUIRE(flute.take_up < sine_take_up(flute.height_mm, pitch_mm.low) * 1.08);
    }
}
