// An order that fits nowhere says which limit stopped each way, with its numbers.
#include <catch2/catch.hpp>

#include <ostream>

#include "host/geometry/layout.hpp"
#include "tests/support/small_plant.hpp"

using namespace flutebook;
using geometry::Refused;

namespace flutebook::geometry {

static bool operator==(const Refused& a, const Refused& b) {
    return a.candidate == b.candidate && a.limit == b.limit;
}
static std::ostream& operator<<(std::ostream& out, const Refused& entry) {
    return out << "{" << entry.candidate << ": " << entry.limit << "}";
}

}  // namespace flutebook::geometry

namespace {

using Entries = std::vector<Refused>;

// The small plant with C1 alone and rolls of 1850 mm alone.
plant::Plant one_web() {
    plant::Plant plant = fixture::small_plant();
    plant.corrugators.resize(1);
    for (plant::Paper& paper : plant.papers) paper.roll_widths_mm = {1850};
    return plant;
}

Entries refused(const plant::Plant& plant, const orders::Request& request) {
    return geometry::lay_out(plant, request).refused;
}

Entries refused_sheet(const plant::Plant& plant, double length_mm, double width_mm) {
    orders::Request request = fixture::sheet_request(plant);
    request.inside = orders::InsideSize{length_mm, width_mm, 0};
    return refused(plant, request);
}

}  // namespace

TEST_CASE("a sheet too long for the knife names the chop") {
    REQUIRE(refused_sheet(one_web(), 800, 5200) ==
            Entries{{"C1, no converter", "chop 5200 mm is above the 4500 mm of C1"}});
}

TEST_CASE("a sheet too short for the knife names the chop") {
    REQUIRE(refused_sheet(one_web(), 800, 440.5) ==
            Entries{{"C1, no converter", "chop 440.5 mm is below the 450 mm of C1"}});
}

TEST_CASE("a sheet too wide for the slitter names the slit width") {
    plant::Plant plant = one_web();
    plant.corrugators.front().slit_mm = {150, 700};
    REQUIRE(refused_sheet(plant, 800, 900) ==
            Entries{{"C1, no converter", "slit width 800 mm is above the 700 mm of C1"}});
}

TEST_CASE("a sheet wider than the roll inside its trim names roll and trim") {
    REQUIRE(refused_sheet(one_web(), 1830, 900) ==
            Entries{{"C1, roll 1850 mm, no converter",
                     "slit width 1830 mm is above the 1820 mm that C1 leaves inside its trim"}});
}

TEST_CASE("a roll that the corrugator does not take is named once for all routes") {
    plant::Plant plant = one_web();
    plant.corrugators.front().roll_width_mm = {1400, 1800};
    REQUIRE(refused(plant, fixture::double_wall_request(plant)) ==
            Entries{{"C1, roll 1850 mm", "roll width 1850 mm is above the 1800 mm of C1"}});
}

TEST_CASE("every corrugator gives its own limit") {
    REQUIRE(refused_sheet(fixture::small_plant(), 800, 5200) ==
            Entries{{"C1, no converter", "chop 5200 mm is above the 4500 mm of C1"},
                    {"C2, no converter", "chop 5200 mm is above the 3600 mm of C2"}});
}

TEST_CASE("a box too large for its machines names each machine's limit") {
    const plant::Plant plant = one_web();
    orders::Request request = fixture::box_request(plant);
    request.inside = orders::InsideSize{900, 900, 300};
    request.colours = 1;
    REQUIRE(refused(plant, request) == Entries{{"FG1", "sheet length 3640 mm is above the 2400 mm of FG1"},
                                               {"FG1", "sheet width 1209 mm is above the 1150 mm of FG1"},
                                               {"FG2", "sheet length 3640 mm is above the 3400 mm of FG2"}});
}

TEST_CASE("a blank too small for the machine behind the die cutter is named as a blank") {
    const plant::Plant plant = one_web();
    orders::Request request = fixture::long_route_request(plant);
    request.outline = orders::Outline{250, 310, 0.07};
    REQUIRE(refused(plant, request) == Entries{{"PR1 > DC1 > FG1", "blank length 250 mm is below the 300 mm of FG1"}});
}

TEST_CASE("numbers of boxes that one limit stops share an entry") {
    plant::Plant plant = one_web();
    plant.converters[fixture::converter_index(plant, "DC1")].length_mm = {500, 600};
    orders::Request request = fixture::outline_request(plant);
    request.outline = orders::Outline{150, 310, 0.04};
    REQUIRE(
        refused(plant, request) ==
        Entries{
            {"1 to 3 along the chop, DC1", "3 along the chop make a sheet length of 490 mm, below the 500 mm of DC1"},
            {"4 or more along the chop, DC1",
             "4 along the chop make a sheet length of 648 mm, above the 600 mm of DC1"},
            {"1 across the web, DC1", "1 across the web makes a sheet width of 334 mm, below the 400 mm of DC1"},
            {"5 or more across the web, DC1",
             "5 across the web make a sheet width of 1606 mm, above the 1600 mm of DC1"}});
}

TEST_CASE("a folder-gluer ahead of the die cutter is named where it keeps the sheet to one box") {
    // common practice, no published source
    const plant::Plant plant = one_web();
    orders::Request request = fixture::outline_request(plant);
    request.route = fixture::route_of(plant, {"FG1", "DC1"});
    request.outline = orders::Outline{450, 400, 0.1};
    REQUIRE(refused(plant, request) ==
            Entries{{"2 or more on a sheet, FG1 > DC1", "FG1 stands ahead of DC1 and makes one box a sheet"},
                    {"FG1 > DC1", "sheet length 474 mm is below the 500 mm of DC1"}});
}

TEST_CASE("colours that no machine of the route has are named with what each has") {
    const plant::Plant plant = one_web();
    orders::Request request = fixture::long_route_request(plant);
    request.colours = 5;
    REQUIRE(
        refused(plant, request) ==
        Entries{{"PR1 > DC1 > FG1",
                 "5 colours are asked for: PR1 has 4, DC1 has 2, FG1 has 3; no machine of the plant that could stand "
                 "in it has so many"}});
}

TEST_CASE("a route that lacks the colours is answered with the machines of the plant that have them") {
    plant::Plant plant = one_web();
    orders::Request request = fixture::box_request(plant);
    request.route = fixture::route_of(plant, {"FG2"});
    request.colours = 4;
    REQUIRE(refused(plant, request) ==
            Entries{{"FG2",
                     "4 colours are asked for: FG2 has 1; in the plant PR1 has 4: put it into the route, or leave "
                     "the route out"}});
    request.colours = 3;
    REQUIRE(refused(plant, request) ==
            Entries{{"FG2",
                     "3 colours are asked for: FG2 has 1; in the plant PR1 has 4, FG1 has 3: put one of them into "
                     "the route, or leave the route out"}});
}

TEST_CASE("papers that share no roll width are named") {
    const plant::Plant plant = fixture::small_plant();
    orders::Request request = fixture::box_request(plant);
    request.board = fixture::board_index(plant, "W-135");
    REQUIRE(refused(plant, request) ==
            Entries{{"board W-135", "its papers are stocked in no common roll width: WT135, SC127"}});
}

TEST_CASE("a kind of machine that the plant lacks is named") {
    plant::Plant plant = one_web();
    plant.converters.clear();
    REQUIRE(refused(plant, fixture::box_request(plant)) ==
            Entries{{"style 0201", "the plant has no folder-gluer, which makes it"}});
}

TEST_CASE("of several stages the one that no machine of the plant makes is named") {
    const plant::Plant plant = one_web();
    const orders::Request request = fixture::box_request(plant);
    const auto told = [&](const std::vector<box_styles::Stage>& stages) {
        const geometry::RouteNeeds needs{stages, false};
        const auto routes = geometry::make_routes(plant, request, needs).value();
        const auto entries =
            geometry::why_nothing_fits(plant, request, needs, blanks::make_blank(plant, request), routes);
        REQUIRE(entries.size() == 1);
        return entries.front().limit;
    };
    using Converter = plant::Converter;
    REQUIRE(told({{Converter::Kind::slitter}}) == "the plant has no slitter, which makes it");
    REQUIRE(told({{Converter::Kind::die_cutter}, {Converter::Kind::stitcher, Converter::Kind::hand}}) ==
            "the plant has no stitcher or hand station for stage 2 of die cutter, then stitcher or hand station");
    REQUIRE(told({{Converter::Kind::die_cutter}, {Converter::Kind::die_cutter}}) ==
            "the plant has too few machines for its stages, each made by another: die cutter, then die cutter");
}

TEST_CASE("a folder-gluer that cuts all flaps to one depth is named, with what would cut them") {
    const plant::Plant plant = one_web();
    orders::Request request = fixture::box_request(plant);
    request.route = fixture::route_of(plant, {"FG1"});
    const geometry::RouteNeeds needs{{{plant::Converter::Kind::folder_gluer}}, true};
    const auto routes = geometry::make_routes(plant, request, needs).value();
    const auto entries = geometry::why_nothing_fits(plant, request, needs, blanks::make_blank(plant, request), routes);
    REQUIRE(entries.front().candidate == "FG1");
    REQUIRE(entries.front().limit ==
            "the flaps of a row have unequal depths, and FG1 cuts them to one; a die cutter must stand ahead of it, or "
            "a folder-gluer that has `cuts_flaps: true` in its place");
}

TEST_CASE(
    "colours that neither a machine nor a printer has are named with what each has, where the route is left out") {
    const plant::Plant plant = one_web();
    orders::Request request = fixture::box_request(plant);
    request.colours = 5;
    REQUIRE(refused(plant, request) == Entries{{"FG1", "5 colours are asked for: FG1 has 3, PR1 has 4"},
                                               {"FG2", "5 colours are asked for: FG2 has 1, PR1 has 4"}});
}

TEST_CASE("an order with more routes than anybody could weigh is refused with what to do") {
    plant::Plant plant = one_web();
    const plant::Converter folder = plant.converters[fixture::converter_index(plant, "FG1")];
    for (int i = 0; i < 10'001; ++i) plant.converters.push_back(folder);
    REQUIRE(refused(plant, fixture::box_request(plant)) ==
            Entries{{"every way",
                     "there are more than 10000 routes through the plant's machines; give the route in the request"}});
}

TEST_CASE("limits are shown in inches for a plant with us units") {
    plant::Plant plant = one_web();
    plant.units = plant::Units::us;
    plant.corrugators.front().chop_mm = {450, 4572};
    REQUIRE(refused_sheet(plant, 800, 5080) == Entries{{"C1, no converter", "chop 200 in is above the 180 in of C1"}});
}

TEST_CASE("an order with more ways than anybody could weigh, by its rolls, is refused with the reason") {
    plant::Plant plant = one_web();
    plant.converters[fixture::converter_index(plant, "DC1")].ups_max = 500;
    plant.converters[fixture::converter_index(plant, "DC1")].length_mm = {1, 1e6};
    plant.converters[fixture::converter_index(plant, "DC1")].width_mm = {1, 1e6};
    plant.corrugators.front().chop_mm = plant.corrugators.front().slit_mm = {1, 1e6};
    for (plant::Paper& paper : plant.papers) {
        paper.roll_widths_mm.clear();
        for (int i = 0; i < 1000; ++i) paper.roll_widths_mm.push_back(2000 + 0.25 * i);
    }
    orders::Request request = fixture::outline_request(plant);
    request.outline = orders::Outline{2, 1, 1e-6};
    plant.converters[fixture::converter_index(plant, "DC1")].between_mm = 0;
    const Entries entries = refused(plant, request);
    REQUIRE(entries.size() == 1);
    REQUIRE(entries.front().limit.find("more than 2000000 ways") != std::string::npos);
}

TEST_CASE("an order with more ways than anybody could weigh, by its boxes on a sheet, is refused with the reason") {
    plant::Plant plant = one_web();
    plant::Converter& die_cutter = plant.converters[fixture::converter_index(plant, "DC1")];
    die_cutter.ups_max = 1e9;
    die_cutter.length_mm = die_cutter.width_mm = {1, 1e9};
    plant.corrugators.front().chop_mm = plant.corrugators.front().slit_mm = {1, 1e9};
    orders::Request request = fixture::outline_request(plant);
    request.outline = orders::Outline{0.001, 0.001, 1e-12};
    const Entries entries = refused(plant, request);
    REQUIRE(entries.size() == 1);
    REQUIRE(entries.front().limit.find("more than 2000000 ways") != std::string::npos);
}
