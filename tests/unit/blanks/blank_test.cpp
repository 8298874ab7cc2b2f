// One box laid flat, by style.
#include <catch2/catch.hpp>

#include "host/base/errors.hpp"
#include "host/blanks/blank.hpp"
#include "tests/support/small_plant.hpp"

using namespace flutebook;
using blanks::Blank;
using blanks::make_blank;

namespace {

// 400 x 300 x 250 inside, on B: panel 3, depth 6, flap 1.5, joint 2, tab 30, slot 6 mm.
Blank small_box() {
    const plant::Plant plant = fixture::small_plant();
    return make_blank(plant, fixture::box_request(plant));
}

Blank flat_sheet() {
    const plant::Plant plant = fixture::small_plant();
    return make_blank(plant, fixture::sheet_request(plant));
}

Blank die_cut() {
    const plant::Plant plant = fixture::small_plant();
    return make_blank(plant, fixture::outline_request(plant));
}

}  // namespace

TEST_CASE("a slotted box is as long as its tab and four panels, each with its allowance, less the joint's") {
    REQUIRE(small_box().length_mm == 30 + 403 + 303 + 403 + 303 - 2);
}

TEST_CASE("a slotted box is as wide as its body and two half-covering flaps") {
    REQUIRE(small_box().width_mm == (250 + 6) + 2 * (150 + 1.5));
}

TEST_CASE("a slotted box loses three slots on each side, and the flaps beside the tab") {
    REQUIRE(small_box().area_m2 == Approx((1440 * 559 - 2 * 30 * 151.5 - 6 * 6 * 151.5) * 1e-6).epsilon(1e-14));
}

TEST_CASE("a slotted box is joined over the whole height of its body") {
    REQUIRE(small_box().joint_mm == 256);
}

TEST_CASE("a double-wall box has the allowances of its own two flutes") {
    const plant::Plant plant = fixture::small_plant();
    const Blank blank = make_blank(plant, fixture::double_wall_request(plant));
    REQUIRE(blank.length_mm == 35 + 2 * (600 + 7) + 2 * (400 + 7) - 3);
    REQUIRE(blank.width_mm == (400 + 14) + 2 * (200 + 3.5));
}

TEST_CASE("the first dimension of a sheet lies along the flutes, so across the web") {
    REQUIRE(flat_sheet().width_mm == 1200);
    REQUIRE(flat_sheet().length_mm == 800);
}

TEST_CASE("all of a sheet is product") {
    REQUIRE(flat_sheet().area_m2 == Approx(0.96).epsilon(1e-14));
}

TEST_CASE("a sheet has no joint") {
    REQUIRE(flat_sheet().joint_mm == 0);
}

TEST_CASE("a die-cut blank is what the customer's drawing says") {
    REQUIRE(die_cut().length_mm == 420);
    REQUIRE(die_cut().width_mm == 310);
    REQUIRE(die_cut().area_m2 == 0.11);
}

TEST_CASE("a sheet needs no allowances of its board") {
    plant::Plant plant = fixture::small_plant();
    plant.allowances.clear();
    REQUIRE(make_blank(plant, fixture::sheet_request(plant)).length_mm == 800);
}

TEST_CASE("slots as wide as the narrower panel are refused, slightly narrower ones are not") {
    plant::Plant plant = fixture::small_plant();
    for (plant::Allowance& allowance : plant.allowances) allowance.slot_mm = 303;
    REQUIRE_THROWS_AS(make_blank(plant, fixture::box_request(plant)), InputError);
    for (plant::Allowance& allowance : plant.allowances) allowance.slot_mm = 302.9;
    REQUIRE(make_blank(plant, fixture::box_request(plant)).area_m2 > 0);
}

TEST_CASE("a blank without length is refused") {
    plant::Plant plant = fixture::small_plant();
    for (plant::Allowance& allowance : plant.allowances) allowance.joint_mm = 1442;
    REQUIRE_THROWS_AS(make_blank(plant, fixture::box_request(plant)), InputError);
}

TEST_CASE("an outline is refused where its net area is larger than its blank, or none") {
    const plant::Plant plant = fixture::small_plant();
    orders::Request request = fixture::outline_request(plant);
    for (const double area_m2 : {0.0, -0.1, 0.42 * 0.31 * 1.001}) {
        request.outline->area_m2 = area_m2;
        REQUIRE_THROWS_AS(make_blank(plant, request), InputError);
    }
    request.outline->area_m2 = 0.42 * 0.31;
    REQUIRE(make_blank(plant, request).area_m2 == 0.42 * 0.31);
}
