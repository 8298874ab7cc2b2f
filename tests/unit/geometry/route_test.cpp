// Which converters an order may run through, where boxes part from the sheet, and which machine prints.
#include <catch2/catch.hpp>

#include "host/geometry/route.hpp"
#include "tests/support/small_plant.hpp"

using namespace flutebook;
using geometry::make_routes;
using geometry::Route;

namespace {

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

}  // namespace

TEST_CASE("a route left out is each folder-gluer in turn for a slotted box") {
    const plant::Plant plant = fixture::small_plant();
    REQUIRE(names(make_routes(plant, fixture::box_request(plant))) == std::vector<std::string>{"FG1", "FG2"});
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
