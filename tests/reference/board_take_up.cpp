// The demo plant's flutes against published take-ups of their class, and against a flute that is a pure sine: of height
// h (peak to trough) and pitch t its length is (2/pi) sqrt(1 + k2) E(k2 / (1 + k2)) of the pitch, k = pi h / t, E the
// complete elliptic integral of the second kind with the parameter m, here by Boost.Math.
//
// Published, h and t in mm:
//  - heights and pitches of A, B, C, E: GDV Transport Information Service, "Wellen und Wellengrößen", after DIN 55468
//    (older edition). Seen.
//  - B 1.329 and C 1.442: ecoinvent 3.10, "corrugated board box production", dataset 11632, general comment. Seen.
//  - bands A 1.48-1.56, B 1.27-1.36, C 1.40-1.48, E 1.15-1.27: seen (the above, and the AICC's column "Ask Ralph" of
//    6 March 2018: C 1.43) and, for their ends, from memory.
// A flute off the machine is no sine: this is for plausibility, and every plant gives its own take-up.
#include <catch2/catch.hpp>

#include <array>
#include <boost/math/constants/constants.hpp>
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

// A class of flute: published height and pitch, and the band of published take-ups.
struct FluteClass {
    const char* code;
    fields::Span height_mm, pitch_mm, take_up;
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

const std::vector<plant::Flute>& demo_flutes() {
    static const plant::Plant plant = plant::read_plant(FLUTEBOOK_SOURCE_DIR "/config/demo");
    return plant.flutes;
}

}  // namespace

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
        const fields::Span pitch_mm = class_of(flute.code).pitch_mm;
        REQUIRE(flute.take_up > sine_take_up(flute.height_mm, pitch_mm.high) * 0.92);
        REQUIRE(flute.take_up < sine_take_up(flute.height_mm, pitch_mm.low) * 1.08);
    }
}
