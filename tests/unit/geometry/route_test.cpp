// Which converters an order may run through, where boxes part from the sheet, and which machine prints.
#include <catch2/catch.hpp>

#include "host/geometry/route.hpp"
#include "tests/support/small_plant.hpp"

using namespace flutebook;
using geometry::Route;
using geometry::RouteNeeds;
using Kind = plant::Converter::Kind;

namespace {

// `plant` outlives the routes.
std::vector<Route> make_routes(const plant::Plant& plant, const orders::Request& request) {
    return geometry::make_routes(plant, request, geometry::route_needs(plant, request)).value();
}

std::vector<std::string> names(const std::vector<Route>& routes) {
    std::vector<std::string> all;
    for (const Route& route : routes) all.push_back(name_of(route));
    return all;
}

// The one route of a box whose request gives these machines and asks for colours. The plant lives on: routes point
// into it.
Route given(const std::vector<std::string>& codes, double colours = 0) {
    static const plant::Plant plant = fixture::small_plant();
    orders::Request request = fixture::box_request(plant);
    request.route = fixture::route_of(plant, codes);
    request.colours = colours;
    return make_routes(plant, request).front();
}

void add_machine(plant::Plant& plant, const std::string& code, Kind kind) {
    plant::Converter machine = plant.converters[fixture::converter_index(plant, "FG1")];
    machine.code = code;
    machine.kind = kind;
    machine.colours = 0;
    plant.converters.push_back(machine);
}

// The small plant (PR1 DC1 FG1 FG2) with a slitter, a second die cutter, a stitcher and a hand station.
plant::Plant plant_of_all_kinds() {
    plant::Plant plant = fixture::small_plant();
    add_machine(plant, "SL1", Kind::slitter);
    add_machine(plant, "DC2", Kind::die_cutter);
    add_machine(plant, "ST1", Kind::stitcher);
    add_machine(plant, "HP1", Kind::hand);
    return plant;
}

// The routes of an order that is made by these stages, where its request leaves the route out.
std::vector<std::string> ways(const RouteNeeds& needs, double colours = 0,
                              const plant::Plant& plant = plant_of_all_kinds()) {
    orders::Request request = fixture::box_request(plant);
    request.colours = colours;
    return names(geometry::make_routes(plant, request, needs).value());
}

// With flaps of unequal depth.
std::vector<std::string> unequal_ways(const plant::Plant& plant = plant_of_all_kinds()) {
    return ways({.stages = {{Kind::folder_gluer}}, .has_unequal_flaps = true}, 0, plant);
}

using Names = std::vector<std::string>;

}  // namespace

TEST_CASE("a route left out is each folder-gluer in turn for a slotted box") {
    const plant::Plant plant = fixture::small_plant();
    orders::Request request = fixture::box_request(plant);
    request.colours = 1;
    REQUIRE(names(make_routes(plant, request)) == std::vector<std::string>{"FG1", "FG2"});
}

TEST_CASE("a route left out is each die cutter in turn for a die-cut blank") {
    const plant::Plant plant = fixture::small_plant();
    REQUIRE(names(make_routes(plant, fixture::outline_request(plant))) == std::vector<std::string>{"DC1"});
}

TEST_CASE("sheets sold as sheets have one route without a machine") {
    const plant::Plant plant = fixture::small_plant();
    const std::vector<Route> routes = make_routes(plant, fixture::sheet_request(plant));
    REQUIRE(routes.size() == 1);
    REQUIRE(routes.front().last_step() == 0);
}

TEST_CASE("a route that is given is the only one, its machines in turn") {
    const plant::Plant plant = fixture::small_plant();
    REQUIRE(names(make_routes(plant, fixture::long_route_request(plant))) ==
            std::vector<std::string>{"PR1 > DC1 > FG1"});
}

TEST_CASE("a plant without a machine of the kind has no route") {
    plant::Plant plant = fixture::small_plant();
    plant.converters.clear();
    REQUIRE(make_routes(plant, fixture::box_request(plant)).empty());
}

TEST_CASE("boxes part from the sheet at the first die cutter") {
    REQUIRE(given({"PR1", "DC1", "FG1"}).parting == 2);
}

TEST_CASE("boxes part from the sheet at the last step where no die cutter is") {
    REQUIRE(given({"PR1", "FG1"}).parting == 2);
}

TEST_CASE("nothing parts where no machine is") {
    REQUIRE(given({}).parting == 0);
}

TEST_CASE("the first machine with enough colours prints them all") {
    // FG2 has one colour, PR1 four, DC1 two.
    REQUIRE(given({"FG2", "PR1", "DC1"}, 2).colours_step == 2);
}

TEST_CASE("no machine prints where no colours are asked for") {
    REQUIRE(given({"PR1", "FG1"}, 0).colours_step == 0);
}

TEST_CASE("two machines that have the colours only together do not print them") {
    REQUIRE(given({"DC1", "FG1"}, 5).colours_step == 0);
}

TEST_CASE("boxes part from the sheet at the first slitter, as at a die cutter") {
    static const plant::Plant plant = plant_of_all_kinds();
    orders::Request request = fixture::box_request(plant);
    request.route = fixture::route_of(plant, {"PR1", "SL1", "FG1"});
    const Route route = make_routes(plant, request).front();
    REQUIRE(route.parting == 2);
    REQUIRE(route.parting_machine()->code == "SL1");
}

TEST_CASE("no machine parts blanks where the route has neither die cutter nor slitter") {
    REQUIRE(given({"PR1", "FG1"}).parting_machine() == nullptr);
}

TEST_CASE("a route left out is every way of taking one machine for each stage in turn, in the order of the plant") {
    REQUIRE(ways({.stages = {{Kind::die_cutter}, {Kind::folder_gluer}}}) ==
            Names{"DC1 > FG1", "DC1 > FG2", "DC2 > FG1", "DC2 > FG2"});
    REQUIRE(ways({.stages = {{Kind::die_cutter}, {Kind::stitcher}, {Kind::hand}}}) ==
            Names{"DC1 > ST1 > HP1", "DC2 > ST1 > HP1"});
}

TEST_CASE("a stage of several kinds is made by a machine of any of them") {
    REQUIRE(ways({.stages = {{Kind::slitter, Kind::die_cutter}}}) == Names{"DC1", "SL1", "DC2"});
    REQUIRE(ways({.stages = {{Kind::die_cutter}, {Kind::stitcher, Kind::hand}}}) ==
            Names{"DC1 > ST1", "DC1 > HP1", "DC2 > ST1", "DC2 > HP1"});
}

TEST_CASE("no machine takes two stages of one route") {
    REQUIRE(ways({.stages = {{Kind::die_cutter}, {Kind::die_cutter}}}) == Names{"DC1 > DC2", "DC2 > DC1"});
    REQUIRE(ways({.stages = {{Kind::slitter}, {Kind::slitter}}}).empty());
}

TEST_CASE("a stage that no machine of the plant makes leaves no route") {
    plant::Plant plant = fixture::small_plant();
    REQUIRE(ways({.stages = {{Kind::die_cutter}, {Kind::stitcher}}}, 0, plant).empty());
}

TEST_CASE("a printer is added in front of each way that lacks the colours asked for, and of no other") {
    // DC1 has two colours, DC2 none, FG1 three (of a box that it prints after the die cutter), PR1 four.
    REQUIRE(ways({.stages = {{Kind::die_cutter}}}, 2) == Names{"DC1", "PR1 > DC2"});
    REQUIRE(ways({.stages = {{Kind::folder_gluer}}}, 3) == Names{"FG1", "PR1 > FG2"});
    REQUIRE(ways({.stages = {{Kind::slitter}, {Kind::stitcher}}}, 4) == Names{"PR1 > SL1 > ST1"});
}

TEST_CASE("every printer that has the colours is tried") {
    plant::Plant plant = plant_of_all_kinds();
    add_machine(plant, "PR2", Kind::printer);
    add_machine(plant, "PR3", Kind::printer);
    plant.converters.back().colours = 6;
    REQUIRE(ways({.stages = {{Kind::slitter}}}, 4, plant) == Names{"PR1 > SL1", "PR3 > SL1"});
}

TEST_CASE("sheets sold as sheets go through a printer where they are to be printed") {
    REQUIRE(ways({.stages = {}}, 2) == Names{"PR1"});
    REQUIRE(ways({.stages = {}}, 0) == Names{"no converter"});
}

TEST_CASE("a way whose colours no printer has stays without one") {
    REQUIRE(ways({.stages = {{Kind::slitter}}}, 7) == Names{"SL1"});
}

TEST_CASE("a given route stays as it is, whatever it lacks") {
    static const plant::Plant plant = plant_of_all_kinds();
    orders::Request request = fixture::box_request(plant);
    request.route = fixture::route_of(plant, {"FG2"});
    request.colours = 4;
    const auto routes = geometry::make_routes(plant, request, {{{Kind::folder_gluer}}, true}).value();
    REQUIRE(names(routes) == Names{"FG2"});
    REQUIRE(routes.front().even_flaps->code == "FG2");
}

TEST_CASE("flaps of unequal depth put a die cutter ahead of the folder-gluer") {
    REQUIRE(unequal_ways() == Names{"DC1 > FG1", "DC2 > FG1", "DC1 > FG2", "DC2 > FG2"});
}

TEST_CASE("a folder-gluer that cuts flaps makes unequal ones by itself") {
    plant::Plant plant = plant_of_all_kinds();
    plant.converters[fixture::converter_index(plant, "FG2")].cuts_flaps = true;
    REQUIRE(unequal_ways(plant) == Names{"DC1 > FG1", "DC2 > FG1", "FG2"});
}

TEST_CASE("a slitter ahead of the folder-gluer cuts no flaps") {
    static const plant::Plant plant = plant_of_all_kinds();
    orders::Request request = fixture::box_request(plant);
    request.route = fixture::route_of(plant, {"SL1", "FG1"});
    const auto routes = geometry::make_routes(plant, request, {{{Kind::folder_gluer}}, true}).value();
    REQUIRE(routes.front().even_flaps->code == "FG1");
}

TEST_CASE("flaps of one depth need no die cutter") {
    REQUIRE(ways({.stages = {{Kind::folder_gluer}}}) == Names{"FG1", "FG2"});
}

TEST_CASE("unequal flaps and colours both put their machine in front, the printer first") {
    REQUIRE(ways({.stages = {{Kind::folder_gluer}}, .has_unequal_flaps = true}, 4) ==
            Names{"PR1 > DC1 > FG1", "PR1 > DC2 > FG1", "PR1 > DC1 > FG2", "PR1 > DC2 > FG2"});
}

TEST_CASE("a drawn style needs a die cutter for its flaps only at sizes where they differ") {
    static const plant::Plant plant = plant_of_all_kinds();
    const auto routes_of = [&](const char* style, double length_mm, double width_mm) {
        orders::Request request = fixture::box_request(plant);
        request.style = style;
        request.inside = orders::InsideSize{length_mm, width_mm, 250};
        request.colours = 0;
        return names(make_routes(plant, request));
    };
    const Names alone{"FG1", "FG2"};
    const Names behind_die_cutter{"DC1 > FG1", "DC2 > FG1", "DC1 > FG2", "DC2 > FG2"};
    REQUIRE(routes_of("0201", 400, 300) == alone);
    REQUIRE(routes_of("0204", 400, 300) == behind_die_cutter);
    REQUIRE(routes_of("0204", 300, 300) == alone);
    REQUIRE(routes_of("0215", 400, 300) == Names{"DC1 > FG1", "DC1 > FG2", "DC2 > FG1", "DC2 > FG2"});
}

TEST_CASE("more ways to route an order than anybody could weigh are not made") {
    plant::Plant plant = fixture::small_plant();
    for (int i = 0; i < 30; ++i) add_machine(plant, "H" + std::to_string(i), Kind::hand);
    const orders::Request request = fixture::box_request(plant);
    REQUIRE_FALSE(geometry::make_routes(plant, request, {{{Kind::hand}, {Kind::hand}, {Kind::hand}}, false}));
    // 30 x 29 x 28 x 27 x 26 tries, and a stage at the end that finds no machine.
    const box_styles::Stage hand{Kind::hand};
    REQUIRE_FALSE(geometry::make_routes(plant, request, {{hand, hand, hand, hand, hand, {Kind::slitter}}, false}));
}
