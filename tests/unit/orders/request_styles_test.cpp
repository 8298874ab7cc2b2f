// What a request's style decides: further measures, outside dimensions, the way of the flutes, the boards it takes.
#include <catch2/catch.hpp>

#include "tests/unit/plant/plant_folder.hpp"

using namespace flutebook;
using namespace flutebook::fixture;

namespace {

constexpr const char* inside = "inside: {length: 400, width: 300, height: 250}";

// The folder's request in another style, made by whatever makes it.
PlantFolder& in_style(PlantFolder& folder, const std::string& style, const std::string& dimensions) {
    folder.change("r.yaml", "style: \"0201\"", "style: \"" + style + "\"");
    folder.change("r.yaml", inside, dimensions);
    folder.change("r.yaml", "route: [FG1]\n", "");
    return folder;
}

}  // namespace

TEST_CASE("a request gives the measures that its style asks for") {
    PlantFolder folder;
    const auto request = in_style(folder, "0202", std::string(inside) + "\nmeasures: {overlap: 60 mm}").read_request();
    REQUIRE(request.measures.size() == 1);
    CHECK(request.measures[0].first == "overlap");
    CHECK(request.measures[0].second == 60);
}

TEST_CASE("a measure that the style does not ask for is refused with those that it does") {
    PlantFolder folder;
    CHECK(in_style(folder, "0202", std::string(inside) + "\nmeasures: {over: 60}").request_complaints() ==
          Lines{"r.yaml:6:12: measures.over: style `0202` asks for no such measure, expected `overlap`"});
    CHECK(request_complaints_after(inside, std::string(inside) + "\nmeasures: {over: 60}") ==
          Lines{"r.yaml:6:12: measures.over: style `0201` asks for no measure"});
}

TEST_CASE("a request gives inside or outside dimensions, never both") {
    PlantFolder folder;
    folder.change("r.yaml", "inside:", "outside:");
    const auto request = folder.read_request();
    CHECK_FALSE(request.inside.has_value());
    CHECK(request.outside->height_mm == 250);
    CHECK(request_complaints_after(inside, std::string(inside) + "\noutside: {length: 410, width: 310, height: 260}") ==
          Lines{"r.yaml:6:1: outside: beside `inside`: expected one of them"});
}

TEST_CASE("flutes run as the style is drawn unless it lets them turn") {
    CHECK(request_complaints_after(inside, std::string(inside) + "\nflutes: along B") ==
          Lines{"r.yaml:6:1: flutes: not for style `0201`: its flutes run as it is drawn"});
    PlantFolder folder;
    folder.write("styles.yaml", "styles: {P-1: {title: Pad, turn: true, along: [B], across: [L]}}");
    const std::string flat = "inside: {length: 400, width: 300}";
    CHECK(in_style(folder, "P-1", flat + "\nflutes: along B").read_request().is_turned);
    folder.change("r.yaml", "along B", "along L");
    CHECK_FALSE(folder.read_request().is_turned);
    folder.change("r.yaml", "along L", "across L");
    CHECK(folder.request_complaints() ==
          Lines{"r.yaml:6:9: flutes: not a choice: found `across L`, expected one of `along L`, `along B`"});
}

TEST_CASE("a board of one liner is refused for every style that is folded, and taken for a sheet") {
    PlantFolder folder;
    folder.change("boards.yaml", "boards:\n", "boards:\n  SF: {plies: [KL135, {flute: B, paper: SC127}]}\n");
    folder.change("r.yaml", "board: B-140", "board: SF");
    CHECK(folder.request_complaints() ==
          Lines{"r.yaml:6:8: board: a board of one liner, which cannot be creased and folded: found `SF` for style "
                "`0201`, expected a board with a liner on both sides"});
    CHECK(in_style(folder, "0110", "inside: {length: 1200, width: 800}").request_complaints().empty());
}
