// Boxes on a sheet.
#include <rapidcheck.h>
#include <catch2/catch.hpp>

#include <utility>

#include "host/geometry/sheet.hpp"
#include "tests/support/small_plant.hpp"

using namespace flutebook;
using geometry::Boxes;
using geometry::BoxRow;
using geometry::narrowed;
using geometry::SheetRule;

namespace {

// How a route of the small plant holds a blank of 420 x 310 mm. DC1: 8 between, 12 at the edge, 12 up.
SheetRule rule(const std::vector<std::string>& codes) {
    plant::Plant plant = fixture::small_plant();
    for (const auto& [code, kind] :
         {std::pair("SL1", plant::Converter::Kind::slitter), std::pair("ST1", plant::Converter::Kind::stitcher),
          std::pair("HP1", plant::Converter::Kind::hand)}) {
        plant::Converter machine = plant.converters[fixture::converter_index(plant, "FG1")];
        machine.code = code;
        machine.kind = kind;
        machine.ups_max = kind == plant::Converter::Kind::slitter ? 6 : 1;
        plant.converters.push_back(machine);
    }
    orders::Request request = fixture::outline_request(plant);
    request.route = fixture::route_of(plant, codes);
    const auto routes = geometry::make_routes(plant, request, geometry::route_needs(plant, request));
    return geometry::sheet_rule(blanks::make_blank(plant, request), routes->front());
}

}  // namespace

TEST_CASE("a folder-gluer makes one box a sheet") {
    // common practice, no published source
    REQUIRE(rule({"FG1"}).ups_max == 1);
}

TEST_CASE("a folder-gluer's sheet is the blank, with nothing at its edge") {
    REQUIRE(rule({"FG1"}).along.length_mm(1) == 420);
    REQUIRE(rule({"FG1"}).across.length_mm(1) == 310);
}

TEST_CASE("a die cutter holds as many boxes on a sheet as its form takes") {
    REQUIRE(rule({"DC1"}).ups_max == 12);
}

TEST_CASE("boxes on a die cutter's sheet lie apart, with an edge at either end") {
    REQUIRE(rule({"DC1"}).along.length_mm(3) == 3 * 420 + 2 * 8 + 2 * 12);
    REQUIRE(rule({"DC1"}).across.length_mm(2) == 2 * 310 + 1 * 8 + 2 * 12);
}

TEST_CASE("a machine behind the die cutter does not change the sheet") {
    REQUIRE(rule({"PR1", "DC1", "FG1"}).ups_max == 12);
}

TEST_CASE("a folder-gluer ahead of the die cutter leaves it one box a sheet") {
    // common practice, no published source
    REQUIRE(rule({"FG1", "DC1"}).ups_max == 1);
}

TEST_CASE("a slitter's sheet holds blanks edge to edge, as many as it takes") {
    REQUIRE(rule({"SL1", "FG1"}).ups_max == 6);
    REQUIRE(rule({"SL1", "FG1"}).along.length_mm(3) == 3 * 420);
    REQUIRE(rule({"SL1", "FG1"}).across.length_mm(2) == 2 * 310);
}

TEST_CASE("a stitcher or a hand station ahead of the slitter leaves it one box a sheet") {
    // common practice, no published source
    REQUIRE(rule({"ST1", "SL1"}).ups_max == 1);
    REQUIRE(rule({"HP1", "DC1"}).ups_max == 1);
    REQUIRE(rule({"PR1", "SL1"}).ups_max == 6);
}

TEST_CASE("a limit is kept by a length that strays from it by less than a nanometre") {
    REQUIRE(geometry::is_within(2400 + 4e-13 * 2400, {300, 2400}));
    REQUIRE(geometry::is_within(300 - 1e-10, {300, 2400}));
}

TEST_CASE("a limit is broken by a hundredth of a millimetre") {
    REQUIRE_FALSE(geometry::is_within(2400.01, {300, 2400}));
    REQUIRE_FALSE(geometry::is_within(299.99, {300, 2400}));
}

TEST_CASE("as many boxes keep to a limit as trying each number finds") {
    REQUIRE(rc::check([] {
        const BoxRow row = {*rc::gen::inRange(1, 4000) / 8.0, *rc::gen::inRange(0, 160) / 8.0,
                            *rc::gen::inRange(0, 160) / 8.0};
        const fields::Span limits = {*rc::gen::inRange(0, 3000) / 4.0, *rc::gen::inRange(0, 12000) / 4.0};
        const double most = *rc::gen::inRange(1, 60);
        const Boxes boxes = narrowed({1, most}, row, limits);
        for (double count = 1; count <= most; ++count)
            RC_ASSERT(boxes.holds(count) == geometry::is_within(row.length_mm(count), limits));
    }));
}

TEST_CASE("a row that meets a limit but for a rounding keeps to it") {
    const Boxes boxes = narrowed({1, 10}, {100, 0, 0}, {300 + 1e-10, 300 - 1e-10});
    REQUIRE(boxes.first == 3);
    REQUIRE(boxes.last == 3);
}

TEST_CASE("no boxes at all stay none under any limit") {
    REQUIRE(narrowed({5, 4}, {100, 0, 0}, {0, 1000}).none());
}
