// Whole orders laid out on the small plant: which candidates there are, in what order, and what they are called.
#include <catch2/catch.hpp>

#include <algorithm>
#include <utility>

#include "host/geometry/layout.hpp"
#include "tests/support/small_plant.hpp"

using namespace flutebook;
using geometry::Candidate;
using geometry::lay_out;
using geometry::Layout;

namespace {

std::vector<std::string> names(const Layout& layout) {
    std::vector<std::string> all;
    for (const Candidate& candidate : layout.candidates) all.push_back(name_of(candidate));
    return all;
}

bool has(const Layout& layout, const std::string& name) {
    const std::vector<std::string> all = names(layout);
    return std::find(all.begin(), all.end(), name) != all.end();
}

// A plant with one corrugator, one roll width and a die cutter that takes up to four boxes of any size.
plant::Plant die_cutting_plant() {
    plant::Plant plant = fixture::small_plant();
    plant.corrugators.resize(1);
    for (plant::Paper& paper : plant.papers) paper.roll_widths_mm = {2450};
    plant::Converter& die_cutter = plant.converters[fixture::converter_index(plant, "DC1")];
    die_cutter.length_mm = {0, 10000};
    die_cutter.width_mm = {0, 10000};
    die_cutter.ups_max = 4;
    return plant;
}

}  // namespace

TEST_CASE("an order without a die cutter is a way for each corrugator, roll width and machine that fit") {
    const plant::Plant plant = fixture::small_plant();
    // Two colours put PR1 ahead of FG2, 2450 is too wide for C2 and so is 2250.
    std::vector<std::string> expected;
    for (const char* web : {"C1, roll 1850 mm", "C2, roll 1850 mm", "C1, roll 2050 mm", "C2, roll 2050 mm",
                            "C1, roll 2250 mm", "C1, roll 2450 mm"})
        for (const char* route : {"FG1", "PR1 > FG2"}) expected.push_back(std::string(web) + ", " + route);
    REQUIRE(names(lay_out(plant, fixture::box_request(plant))) == expected);
}

TEST_CASE("ways stand by narrower roll, fewer boxes, fewer along, then the order of the files") {
    plant::Plant plant = die_cutting_plant();
    for (plant::Paper& paper : plant.papers) paper.roll_widths_mm = {1850, 2450};
    plant.corrugators.push_back(plant.corrugators.front());
    plant.corrugators.back().code = "C9";
    plant.converters.push_back(plant.converters[fixture::converter_index(plant, "DC1")]);
    plant.converters.back().code = "DC9";
    orders::Request request = fixture::outline_request(plant);
    request.outline = orders::Outline{500, 450, 0.2};
    std::vector<std::string> expected;
    for (const char* roll : {"1850", "2450"})
        for (const char* ups : {"1 x 1", "1 x 2", "2 x 1", "1 x 3", "3 x 1", "1 x 4", "2 x 2", "4 x 1"})
            for (const char* corrugator : {"C1", "C9"})
                for (const char* route : {"DC1", "DC9"})
                    if (std::string(roll) != "1850" || std::string(ups) != "1 x 4")  // four across need 1878 mm
                        expected.push_back(std::string(corrugator) + ", roll " + roll + " mm, " + ups + " up, " +
                                           route);
    REQUIRE(names(lay_out(plant, request)) == expected);
}

TEST_CASE("without a die cutter the sheet is the blank") {
    const plant::Plant plant = fixture::small_plant();
    const Layout layout = lay_out(plant, fixture::box_request(plant));
    const Candidate& first = layout.candidates.front();
    REQUIRE(first.chop_mm == layout.blank.length_mm);
    REQUIRE(first.slit_mm == layout.blank.width_mm);
    REQUIRE(first.ups == 1);
}

TEST_CASE("a sheet's area is its chop by its slit width") {
    const plant::Plant plant = fixture::small_plant();
    const Layout layout = lay_out(plant, fixture::sheet_request(plant));
    REQUIRE(layout.candidates.front().sheet_area_m2 == Approx(0.96).epsilon(1e-14));
}

TEST_CASE("a machine up to the die cutter must take the sheet") {
    plant::Plant plant = fixture::small_plant();
    plant.converters[fixture::converter_index(plant, "PR1")].length_mm = {400, 1000};
    // Two along make 872 mm, three 1300 mm; DC1 takes 2000.
    const Layout layout = lay_out(plant, fixture::long_route_request(plant));
    REQUIRE(has(layout, "C1, roll 1850 mm, 2 x 2 up, PR1 > DC1 > FG1"));
    REQUIRE_FALSE(has(layout, "C1, roll 1850 mm, 3 x 2 up, PR1 > DC1 > FG1"));
}

TEST_CASE("a machine after the die cutter need not take the sheet, only the blank") {
    plant::Plant plant = fixture::small_plant();
    plant.converters[fixture::converter_index(plant, "FG1")].length_mm = {300, 420};
    REQUIRE(has(lay_out(plant, fixture::long_route_request(plant)), "C1, roll 1850 mm, 3 x 2 up, PR1 > DC1 > FG1"));
}

TEST_CASE("a machine after the die cutter must take the blank") {
    plant::Plant plant = fixture::small_plant();
    plant.converters[fixture::converter_index(plant, "FG1")].length_mm = {300, 419};
    REQUIRE(lay_out(plant, fixture::long_route_request(plant)).candidates.empty());
}

TEST_CASE("a corrugator's knife keeps to its chop") {
    plant::Plant plant = die_cutting_plant();
    plant.corrugators.front().chop_mm = {500, 900};
    orders::Request request = fixture::outline_request(plant);
    // 420 mm a box: one along is 444, two 872, three 1300.
    for (const Candidate& candidate : lay_out(plant, request).candidates) REQUIRE(candidate.nx == 2);
}

TEST_CASE("a corrugator's slitter keeps to its slit width") {
    plant::Plant plant = die_cutting_plant();
    plant.corrugators.front().slit_mm = {400, 700};
    // 310 mm a box: one across is 334, two 652, three 970.
    for (const Candidate& candidate : lay_out(plant, fixture::outline_request(plant)).candidates)
        REQUIRE(candidate.ny == 2);
}

TEST_CASE("a folder-gluer without the colours asked for works behind a printer that has them") {
    const plant::Plant plant = fixture::small_plant();
    const Layout layout = lay_out(plant, fixture::box_request(plant));
    // FG1 has two colours and more, FG2 has one.
    REQUIRE(has(layout, "C1, roll 1850 mm, FG1"));
    REQUIRE(has(layout, "C1, roll 1850 mm, PR1 > FG2"));
    REQUIRE_FALSE(has(layout, "C1, roll 1850 mm, PR1 > FG1"));
}

TEST_CASE("a slitter parts a sheet of several blanks without waste between them") {
    plant::Plant plant = die_cutting_plant();
    plant::Converter& slitter = plant.converters[fixture::converter_index(plant, "DC1")];
    slitter.kind = plant::Converter::Kind::slitter;
    slitter.between_mm = slitter.edge_mm = 0;
    orders::Request request = fixture::outline_request(plant);
    request.route = fixture::route_of(plant, {"DC1"});
    const Layout layout = lay_out(plant, request);
    const auto found = std::find_if(layout.candidates.begin(), layout.candidates.end(),
                                    [](const Candidate& candidate) { return candidate.nx == 2 && candidate.ny == 2; });
    REQUIRE(found != layout.candidates.end());
    REQUIRE(found->chop_mm == 2 * 420);
    REQUIRE(found->slit_mm == 2 * 310);
    REQUIRE(name_of(*found) == "C1, roll 2450 mm, 2 x 2 up, DC1");
}

TEST_CASE("a route without the colours asked for makes nothing") {
    const plant::Plant plant = fixture::small_plant();
    orders::Request request = fixture::box_request(plant);
    request.route = fixture::route_of(plant, {"FG1"});
    request.colours = 4;
    REQUIRE(lay_out(plant, request).candidates.empty());
}

TEST_CASE("a printer on the route lends its colours to the machines behind it") {
    const plant::Plant plant = fixture::small_plant();
    orders::Request request = fixture::box_request(plant);
    request.colours = 4;
    request.route = fixture::route_of(plant, {"PR1", "FG2"});
    REQUIRE(has(lay_out(plant, request), "C1, roll 1850 mm, PR1 > FG2"));
}

TEST_CASE("candidates still point to their routes when the layout has moved") {
    const plant::Plant plant = fixture::small_plant();
    Layout first = lay_out(plant, fixture::double_wall_request(plant));
    const std::vector<std::string> before = names(first);
    const Layout second = std::move(first);
    REQUIRE(names(second) == before);
    for (const Candidate& candidate : second.candidates) {
        REQUIRE(candidate.route >= second.routes.data());
        REQUIRE(candidate.route < second.routes.data() + second.routes.size());
    }
}

TEST_CASE("a candidate is named in inches where a plant is shown them") {
    plant::Plant plant = die_cutting_plant();
    for (plant::Paper& paper : plant.papers) paper.roll_widths_mm = {2209.8};
    const Layout layout = lay_out(plant, fixture::outline_request(plant));
    REQUIRE(name_of(layout.candidates.back(), plant::Units::us) == "C1, roll 87 in, 4 x 1 up, DC1");
}

TEST_CASE("sheets sold as sheets are named as going through no converter") {
    const plant::Plant plant = fixture::small_plant();
    REQUIRE(has(lay_out(plant, fixture::sheet_request(plant)), "C1, roll 2450 mm, no converter"));
}

TEST_CASE("an order that fits somewhere lists no limits") {
    const plant::Plant plant = fixture::small_plant();
    REQUIRE(lay_out(plant, fixture::box_request(plant)).refused.empty());
}
