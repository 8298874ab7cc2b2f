// Rolls and the sheets across them.
#include <catch2/catch.hpp>

#include <cmath>

#include "host/geometry/web.hpp"
#include "tests/support/small_plant.hpp"

using namespace flutebook;
using geometry::common_roll_widths;
using geometry::cut_web;
using geometry::WebLayout;

namespace {

// C1 of the small plant: 30 mm of trim at the least, six outs at the most.
plant::Corrugator wide() {
    return fixture::small_plant().corrugators.front();
}

std::vector<double> widths_of(const char* board) {
    const plant::Plant plant = fixture::small_plant();
    return common_roll_widths(plant, plant.boards[fixture::board_index(plant, board)]);
}

}  // namespace

TEST_CASE("a board runs on the roll widths that every ply is stocked in") {
    // WM105, a medium of BC-370, is not stocked in 2450.
    REQUIRE(widths_of("BC-370") == std::vector<double>{1850, 2050, 2250});
}

TEST_CASE("a board whose papers share no roll width runs on none") {
    REQUIRE(widths_of("W-135").empty());
}

TEST_CASE("roll widths of two papers that differ only by rounding are one width") {
    plant::Plant plant = fixture::small_plant();
    for (plant::Paper& paper : plant.papers) paper.roll_widths_mm = {2209.8};
    plant.papers.front().roll_widths_mm = {2209.8, std::nextafter(2209.8, 3000)};
    REQUIRE(common_roll_widths(plant, plant.boards.front()) == std::vector<double>{2209.8});
}

TEST_CASE("papers whose one roll width differs by a rounding share it") {
    plant::Plant plant = fixture::small_plant();
    for (plant::Paper& paper : plant.papers) paper.roll_widths_mm = {2209.8};
    plant.papers.front().roll_widths_mm = {std::nextafter(2209.8, 3000)};
    REQUIRE(common_roll_widths(plant, plant.boards.front()).size() == 1);
}

TEST_CASE("two roll widths a hundredth of a millimetre apart are two") {
    plant::Plant plant = fixture::small_plant();
    for (plant::Paper& paper : plant.papers) paper.roll_widths_mm = {2209.79, 2209.8};
    REQUIRE(common_roll_widths(plant, plant.boards.front()).size() == 2);
}

TEST_CASE("as many sheets lie side by side as the roll holds inside its trim") {
    REQUIRE(cut_web(wide(), 2050, 500).outs == 4);
}

TEST_CASE("trim is what the sheets leave of the roll") {
    REQUIRE(cut_web(wide(), 2050, 500).trim_mm == 50);
}

TEST_CASE("a sheet that would leave less than the least trim is not cut") {
    REQUIRE(cut_web(wide(), 2029, 500).outs == 3);
}

TEST_CASE("the least trim itself is enough") {
    REQUIRE(cut_web(wide(), 2030, 500).outs == 4);
}

TEST_CASE("there are no more outs than the corrugator has knives for") {
    REQUIRE(cut_web(wide(), 2450, 200).outs == 6);
}

TEST_CASE("a sheet wider than the roll is not cut at all") {
    REQUIRE(cut_web(wide(), 1400, 1500).outs == 0);
}

TEST_CASE("a roll narrower than its trim holds nothing") {
    REQUIRE(cut_web(wide(), 20, 500).outs == 0);
}

TEST_CASE("sheets that fill a roll exactly, within rounding, all count") {
    // The quotient is a hair below three.
    plant::Corrugator corrugator = wide();
    corrugator.trim_min_mm = 0.1;
    const double slit_mm = 733.3;
    REQUIRE(cut_web(corrugator, 3 * slit_mm + 0.1 - 1e-9, slit_mm).outs == 3);
}

TEST_CASE("trim is never less than nothing") {
    plant::Corrugator corrugator = wide();
    corrugator.trim_min_mm = 0;
    const WebLayout web = cut_web(corrugator, 3 * 700 - 1e-9, 700);
    REQUIRE(web.outs == 3);
    REQUIRE(web.trim_mm == 0);
}
