// The blank of a regular slotted box (FEFCO 0201), and the shape that takes the least board for what it holds.
//
// The blank before allowances, (2L + 2B + tab) x (H + B), is from memory; the example 400 x 300 x 250 with a tab of 35
// is computed from it: 1435 x 550 mm, 0.789250 m2. That rectangle holds four corners beside the tab which are cut away:
// two pieces of tab x B/2.
// The least board is computed by calculus: (L + B)(B + H) at a given volume V is least at L = H = (2V)^(1/3) and
// B = (V/4)^(1/3), a shape of 2:1:2; for 12.5 dm3 that is 292.40 x 146.20 x 292.40 mm and 0.384742 m2.
#include <catch2/catch.hpp>

#include <boost/math/tools/minima.hpp>
#include <cmath>

#include "host/blanks/blank.hpp"
#include "tests/support/small_plant.hpp"

using namespace flutebook;
using blanks::Blank;

namespace {

// A box on a board whose folds take nothing, with no slots.
Blank bare_box(const orders::InsideSize& inside, double tab_mm) {
    static const plant::Plant pattern = fixture::small_plant();
    plant::Plant plant = pattern;
    for (plant::Allowance& allowance : plant.allowances) {
        allowance.panel_mm = allowance.depth_mm = allowance.flap_mm = 0;
        allowance.joint_mm = allowance.slot_mm = 0;
        allowance.tab_mm = tab_mm;
    }
    orders::Request request = fixture::box_request(plant);
    request.inside = inside;
    return blanks::make_blank(plant, request);
}

Blank worked_example() {
    return bare_box({400, 300, 250}, 35);
}

constexpr double volume_mm3 = 12.5e6;

orders::InsideSize box_holding_volume(double length_mm, double width_mm) {
    return {length_mm, width_mm, volume_mm3 / (length_mm * width_mm)};
}

double board_m2(double length_mm, double width_mm) {
    // A blank has no part of length 0: a tab is made, as high as the body, and its board is taken off again.
    constexpr double tab_mm = 0.01, mm2 = 1e-6;
    const orders::InsideSize box = box_holding_volume(length_mm, width_mm);
    return bare_box(box, tab_mm).area_m2 - tab_mm * box.height_mm * mm2;
}

// Half the digits of a double is as near as a minimum can be told.
constexpr int bits = 26;

double best_width_mm(double length_mm) {
    return boost::math::tools::brent_find_minima([&](double width) { return board_m2(length_mm, width); }, 20.0, 2000.0,
                                                 bits)
        .first;
}

// The least-board box, by search alone: over widths inside, over lengths outside.
orders::InsideSize least_board_box() {
    const double length_mm =
        boost::math::tools::brent_find_minima([](double length) { return board_m2(length, best_width_mm(length)); },
                                              20.0, 2000.0, bits)
            .first;
    return box_holding_volume(length_mm, best_width_mm(length_mm));
}

}  // namespace

TEST_CASE("a 0201 of 400 x 300 x 250 with a tab of 35 and no allowances is a blank of 1435 x 550 mm") {
    REQUIRE(worked_example().length_mm == 1435);
    REQUIRE(worked_example().width_mm == 550);
    REQUIRE(worked_example().length_mm * worked_example().width_mm * 1e-6 == Approx(0.789250).epsilon(1e-12));
}

TEST_CASE("the net area of that box is its blank less the corners beside the tab") {
    REQUIRE(worked_example().area_m2 == Approx(0.789250 - 2 * 0.035 * 0.150).epsilon(1e-12));
}

TEST_CASE("the slotted box that holds 12.5 dm3 in the least board measures 292.40 x 146.20 x 292.40 mm") {
    const orders::InsideSize box = least_board_box();
    REQUIRE(box.length_mm == Approx(292.40).margin(0.01));
    REQUIRE(box.width_mm == Approx(146.20).margin(0.01));
    REQUIRE(box.height_mm == Approx(292.40).margin(0.01));
}

TEST_CASE("the least-board slotted box has the shape 2:1:2") {
    const orders::InsideSize box = least_board_box();
    REQUIRE(box.length_mm / box.width_mm == Approx(2).epsilon(1e-5));
    REQUIRE(box.height_mm / box.width_mm == Approx(2).epsilon(1e-5));
}

TEST_CASE("the least-board slotted box of 12.5 dm3 takes 0.384742 m2") {
    const orders::InsideSize box = least_board_box();
    REQUIRE(board_m2(box.length_mm, box.width_mm) == Approx(0.384742).margin(5e-7));
}
