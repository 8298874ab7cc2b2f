// McKee's simplified formula against figures worked outside.
#include <catch2/catch.hpp>

#include "host/quoting/strength.hpp"
#include "host/reports/strength_report.hpp"

using namespace flutebook;
using quoting::mckee_compression;

// The formula with its constant as a test laboratory prints it (westpak.com; seen); the figures were computed outside:
// ECT 32 lbf/in, caliper 0.16 in, perimeter 56 in: 5.87 x 32 x sqrt(0.16 x 56) = 562.266 lbf.
TEST_CASE("a box of 56 inches round of 32 ECT board 0.16 inches thick bears 562.266 pounds") {
    CHECK(mckee_compression(32, 56, 0.16) == Approx(562.266).margin(0.0005));
}

// The same box in SI (computed): 5.604059 kN/m, 4.064 mm, 1422.4 mm give 2501.085 N, and not kN.
TEST_CASE("the same box in metres and newtons bears the same") {
    const double newtons = mckee_compression(5.604059, 1422.4, 4.064);
    CHECK(newtons == Approx(2501.085).margin(0.0005));
    CHECK(reports::force_text(plant::Units::us, newtons) == "562 lbf");
    CHECK(reports::force_text(plant::Units::metric, newtons) == "2.50 kN");
    CHECK(reports::edge_crush_text(plant::Units::us, 5.604059) == "32.0 lbf/in");
}

// Printed constants differ by 0.1 %: 5.876 (de.wikipedia.org, "Edge Crush Test"; seen) gives 562.841 lbf (computed).
TEST_CASE("the estimate is within 0.2 per cent of the other printed constants, and below them") {
    const double other = 562.841;
    CHECK(mckee_compression(32, 56, 0.16) < other);
    CHECK(mckee_compression(32, 56, 0.16) == Approx(other).epsilon(0.002));
}
