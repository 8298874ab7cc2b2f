// What a request is refused for, each at its place.
#include <catch2/catch.hpp>

#include "host/base/errors.hpp"
#include "host/orders/route_reader.hpp"
#include "tests/unit/plant/plant_folder.hpp"

using namespace flutebook;
using fixture::Lines;
using fixture::PlantFolder;
using fixture::request_complaints_after;

namespace {

constexpr const char* box = "style: \"0201\"\ninside: {length: 400, width: 300, height: 250}";

}  // namespace

TEST_CASE("a fit request earns no complaint") {
    REQUIRE(PlantFolder().request_complaints().empty());
}

TEST_CASE("an unknown style is answered by the list of styles, never by a near number") {
    const Lines complaints = request_complaints_after("style: \"0201\"", "style: \"0210\"");
    REQUIRE(complaints.size() == 1);
    CHECK_THAT(complaints[0],
               Catch::Matchers::StartsWith("r.yaml:4:8: style: unknown style: found `0210`, expected one of `0110`, "));
    CHECK_THAT(complaints[0],
               Catch::Contains("`0201`") && Catch::Contains("`outline`") && !Catch::Contains("did you mean"));
}

TEST_CASE("an unknown board or converter is answered by those that there are, and is not guessed") {
    REQUIRE(request_complaints_after("board: B-140", "board: B-141") ==
            Lines{"r.yaml:6:8: board: unknown board: found `B-141`; expected one of `B-140`, `BC-200`, `C-140`"});
    REQUIRE(request_complaints_after("route: [FG1]", "route: [FG2]") ==
            Lines{"r.yaml:10:9: route[1]: unknown converter: found `FG2`; expected one of `FG1`, `DC1`"});
    REQUIRE(request_complaints_after("extras: {scrap:", "extras: {scarp:") ==
            Lines{"r.yaml:11:10: extras.scarp: unknown model: found `scarp`; did you mean `scrap`"});
}

TEST_CASE("a box without its inside, and an outline without its drawing, are refused") {
    REQUIRE(request_complaints_after("inside: {length: 400, width: 300, height: 250}\n", "") ==
            Lines{"r.yaml:1:1: inside: missing: expected a map"});
    REQUIRE(request_complaints_after("height: 250", "depth: 250") ==
            Lines{"r.yaml:5:1: inside.height: missing: expected a number above 0 in `mm`",
                  "r.yaml:5:35: inside.depth: unknown key; expected one of `length`, `width`, `height`"});
    REQUIRE(request_complaints_after(box, "style: outline").front() == "r.yaml:1:1: outline: missing: expected a map");
}

TEST_CASE("the measures of an unknown style must still be numbers") {
    const PlantFolder folder;
    folder.change("r.yaml", "style: \"0201\"", "style: \"0210\"");
    folder.change("r.yaml", "height: 250", "height: 010");
    const Lines complaints = folder.request_complaints();
    REQUIRE(complaints.size() == 2);
    CHECK_THAT(complaints[0], Catch::Matchers::StartsWith("r.yaml:4:8: style: unknown style: found `0210`, "));
    CHECK_THAT(complaints[1], Catch::Matchers::StartsWith("r.yaml:5:43: inside.height: "));
}

TEST_CASE("a style is measured in one way alone") {
    REQUIRE(request_complaints_after("board: B-140", "outline: {length: 1}\nboard: B-140") ==
            Lines{"r.yaml:6:1: outline: not for style `0201`: expected `inside` alone"});
    const PlantFolder folder;
    folder.change("r.yaml", "style: \"0201\"", "style: outline\noutline: {length: 600, width: 400, area: 0.2}");
    folder.change("r.yaml", "route: [FG1]", "route: [DC1]");
    REQUIRE(folder.request_complaints() ==
            Lines{"r.yaml:6:1: inside: not for style `outline`: expected `outline` alone"});
}

TEST_CASE("a sheet with a height is no sheet") {
    REQUIRE(request_complaints_after("style: \"0201\"", "style: \"0110\"") ==
            Lines{"r.yaml:5:43: inside.height: a sheet has no height: leave it out"});
}

TEST_CASE("every dimension of a box is above 0") {
    REQUIRE(request_complaints_after("height: 250", "height: 0") ==
            Lines{"r.yaml:5:43: inside.height: out of range: found 0, expected a number above 0 in `mm`"});
    REQUIRE(request_complaints_after("length: 400", "length: -400") ==
            Lines{"r.yaml:5:18: inside.length: out of range: found -400, expected a number above 0 in `mm`"});
}

TEST_CASE("a box larger than its blank is refused") {
    const PlantFolder folder;
    folder.change("r.yaml", box, "style: outline\noutline: {length: 600, width: 400, area: 0.25}");
    folder.change("r.yaml", "route: [FG1]", "route: [DC1]");
    REQUIRE(folder.request_complaints() ==
            Lines{"r.yaml:5:42: outline.area: larger than the blank: found 0.25 m2, expected at most length x width, "
                  "0.24 m2"});
}

TEST_CASE("quantities are whole, from 1 to ten millions, each asked for once") {
    const std::string range = ", expected a whole number from 1 to 10000000";
    REQUIRE(request_complaints_after("[500, 1000, 5000]", "[0, 10000001, 2.5]") ==
            Lines{"r.yaml:7:14: quantities[1]: out of range: found 0" + range,
                  "r.yaml:7:17: quantities[2]: out of range: found 10000001" + range,
                  "r.yaml:7:27: quantities[3]: out of range: found 2.5" + range});
    REQUIRE(request_complaints_after("[500, 1000, 5000]", "[1, 10000000]").empty());
    REQUIRE(request_complaints_after("[500, 1000, 5000]", "[500, 500]") ==
            Lines{"r.yaml:7:19: quantities[2]: asked for twice: found 500, expected each quantity once"});
    REQUIRE(request_complaints_after("[500, 1000, 5000]", "[]") ==
            Lines{"r.yaml:7:13: quantities: an empty list: expected at least one entry"});
    REQUIRE(request_complaints_after("[500, 1000, 5000]", "500") ==
            Lines{"r.yaml:7:13: quantities: wrong type: found a text, expected a list"});
}

TEST_CASE("a margin is a share of the price") {
    for (const std::string margin : {"1", "1.5", "-0.1"})
        REQUIRE(request_complaints_after("margin: 0.18", "margin: " + margin) ==
                Lines{"r.yaml:8:9: margin: out of range: found " + margin + ", expected a share from 0 to below 1"});
}

TEST_CASE("colours are counted") {
    REQUIRE(request_complaints_after("colours: 2", "colours: 1.5") ==
            Lines{"r.yaml:9:10: colours: out of range: found 1.5, expected a whole number not below 0"});
}

TEST_CASE("a route holds no more machines than a model takes steps") {
    const PlantFolder folder;
    std::string machines, route = "FG1";
    for (int number = 2; number <= 15; ++number) {
        const std::string code = "FG" + std::to_string(number);
        machines += "  " + code +
                    ": {kind: folder-gluer, sheet: {length: [300, 2400], width: [250, 1150]}, colours: 3, setup: "
                    "{minutes: 25, sheets: 40}, run_waste: 0.012, speed: 9000, hourly: {labour: 95, fixed: 120}, "
                    "power: 75}\n";
        route += ", " + code;
    }
    folder.change("machines.yaml", "dispatch:", machines + "dispatch:");
    folder.change("r.yaml", "route: [FG1]", "route: [" + route + "]");
    REQUIRE(folder.request_complaints() ==
            Lines{"r.yaml:10:8: route: too long: found 15 machines, expected at most 14"});
    folder.change("r.yaml", ", FG15", "");
    REQUIRE(folder.request_complaints().empty());
}

TEST_CASE("a route holds a machine for each stage of its style, in their order, whatever stands between") {
    using Kind = plant::Converter::Kind;
    const auto plant = PlantFolder().read();  // FG1, DC1
    const std::vector<box_styles::Stage> stages{{Kind::slitter, Kind::die_cutter}, {Kind::folder_gluer}};
    const auto fault = [&](const std::vector<std::size_t>& route) {
        return orders::route_fault(plant, stages, "style `0215`", route).value_or("none");
    };
    REQUIRE(fault({1, 0}) == "none");
    const std::string expected =
        "a route that cannot make the box: expected a slitter or die cutter, then folder-gluer for style `0215`; ";
    REQUIRE(fault({1}) == expected + "the route has no folder-gluer");
    REQUIRE(fault({0}) == expected + "the route has no slitter or die cutter");
    REQUIRE(fault({0, 1}) == expected + "FG1 stands too early: put a folder-gluer behind the slitter or die cutter");
    REQUIRE(fault({}) ==
            "an empty route for a box: expected a slitter or die cutter, then folder-gluer for style "
            "`0215`");
    REQUIRE_FALSE(orders::route_fault(plant, {}, "0110", {}).has_value());
    REQUIRE_FALSE(orders::route_fault(plant, {{Kind::folder_gluer}}, "0201", {1, 0}).has_value());
}

TEST_CASE("a route holds a machine that makes the style, and each machine once") {
    REQUIRE(request_complaints_after("route: [FG1]", "route: [DC1]") ==
            Lines{"r.yaml:10:8: route: a route that cannot make the box: expected a folder-gluer for style `0201`"});
    REQUIRE(request_complaints_after("route: [FG1]", "route: []") ==
            Lines{"r.yaml:10:8: route: an empty route for a box: expected a folder-gluer for style `0201`"});
    REQUIRE(request_complaints_after("route: [FG1]", "route: [FG1, FG1]") ==
            Lines{"r.yaml:10:14: route[2]: a machine twice: found `FG1`, expected each machine at most once"});
    REQUIRE(request_complaints_after("route: [FG1]", "route: [C1, FG1]") ==
            Lines{"r.yaml:10:9: route[1]: a corrugator: found `C1`, expected converters only; every route starts at a "
                  "corrugator"});
    REQUIRE(request_complaints_after("route: [FG1]", "route: FG1") ==
            Lines{"r.yaml:10:8: route: wrong type: found a text, expected a list"});
}

TEST_CASE("a board whose flutes have no allowances refuses the box, not the plant") {
    REQUIRE(request_complaints_after("board: B-140", "board: C-140") ==
            Lines{"r.yaml:6:8: board: no allowances for flute `C`: board `C-140` cannot make style `0201`; add them to "
                  "flutes.yaml"});
    const PlantFolder folder;
    folder.change("r.yaml", box, "style: \"0110\"\ninside: {length: 1200, width: 800}");
    folder.change("r.yaml", "board: B-140", "board: C-140");
    REQUIRE(folder.request_complaints().empty());
}

TEST_CASE("a day before a paper's first price refuses the request, once a paper") {
    const PlantFolder folder;
    folder.change("r.yaml", "date: 2026-10-15", "date: 2025-12-31");
    folder.change("r.yaml", "board: B-140", "board: BC-200");
    const std::string where = "r.yaml:3:7: date: no price on 2025-12-31: paper ";
    const std::string from = " of board `BC-200` is priced from 2026-01-01 on";
    REQUIRE(folder.request_complaints() ==
            Lines{where + "`KL135`" + from, where + "`SC127`" + from, where + "`TL125`" + from});
}

TEST_CASE("a date that is no day is refused") {
    for (const std::string date : {"2026-02-30", "15.10.2026", "2026-10", "today"}) {
        REQUIRE(
            request_complaints_after("date: 2026-10-15", "date: " + date) ==
            Lines{"r.yaml:3:7: date: not a date: found `" + date + "`, expected a day of the calendar as YYYY-MM-DD"});
    }
}

TEST_CASE("a request that sets the boxes on a sheet is refused, and the message says that the layout decides") {
    REQUIRE(request_complaints_after("colours: 2", "colours: 2\nups: 4") ==
            Lines{"r.yaml:10:1: ups: not for a request: the layout chooses the boxes on a sheet, and a folder-gluer "
                  "makes one; take it out"});
}

TEST_CASE("settings of a request are maps by model") {
    REQUIRE(request_complaints_after("extras: {scrap: {note: 2}}", "extras: {scrap: 2}") ==
            Lines{"r.yaml:11:17: extras.scrap: wrong type: found a text, expected a map"});
    REQUIRE(request_complaints_after("extras: {scrap: {note: 2}}", "extras: [scrap]") ==
            Lines{"r.yaml:11:9: extras: wrong type: found a list, expected a map"});
}

TEST_CASE("a setting of a request is a value or a table of values") {
    REQUIRE(request_complaints_after("extras: {scrap: {note: 2}}", "extras: {scrap: {note: [2]}}") ==
            Lines{"r.yaml:11:24: extras.scrap.note: wrong type: found a list, expected a number, a word, or a table of "
                  "them"});
    REQUIRE(request_complaints_after("extras: {scrap: {note: 2}}", "extras: {scrap: {note: {KL135: {a: 2}}}}") ==
            Lines{"r.yaml:11:32: extras.scrap.note.KL135: wrong type: found a map, expected a number or a word"});
}

TEST_CASE("all errors of a request are reported together, from its top") {
    const PlantFolder folder;
    folder.write("r.yaml",
                 "request: R-3\ndate: soon\nstyle: \"0201\"\ninside: {length: 400, width: 300}\nboard: X\n"
                 "quantities: [many]\nmargin: 2\ncolor: 1\n");
    REQUIRE(folder.request_complaints() ==
            Lines{"r.yaml:2:7: date: not a date: found `soon`, expected a day of the calendar as YYYY-MM-DD",
                  "r.yaml:4:1: inside.height: missing: expected a number above 0 in `mm`",
                  "r.yaml:5:8: board: unknown board: found `X`; expected one of `B-140`, `BC-200`, `C-140`",
                  "r.yaml:6:14: quantities[1]: not a number: found `many`, expected a plain decimal, or a decimal, a "
                  "space and a unit",
                  "r.yaml:7:9: margin: out of range: found 2, expected a share from 0 to below 1",
                  "r.yaml:8:1: color: unknown key; did you mean `colours`"});
}

TEST_CASE("a request that refuses what YAML allows says so in its own name") {
    REQUIRE(request_complaints_after("board: B-140", "board: &b B-140\nboard: *b") ==
            Lines{"r.yaml:6:8: board: an anchor, expected the value itself",
                  "r.yaml:7:1: board: duplicate key, expected each key once",
                  "r.yaml:7:8: board: an alias, expected the value itself"});
}
