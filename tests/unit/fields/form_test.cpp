// What every field of every file is held to: each error told once, at its place, with its path.
#include <catch2/catch.hpp>

#include "tests/unit/plant/plant_folder.hpp"

using namespace flutebook;
using fixture::complaints_after;
using fixture::Lines;
using fixture::PlantFolder;

TEST_CASE("a fit plant earns no complaint") {
    REQUIRE(PlantFolder().complaints().empty());
}

TEST_CASE("an unknown key names the one that was meant") {
    REQUIRE(complaints_after("machines.yaml", "run_waste: 0.018", "run_wast: 0.018") ==
            Lines{"machines.yaml:2:3: corrugators.C1.run_waste: missing: expected a share from 0 to below 1",
                  "machines.yaml:3:85: corrugators.C1.run_wast: unknown key; did you mean `run_waste`"});
}

TEST_CASE("an error for an unknown key that resembles none lists the known keys") {
    REQUIRE(complaints_after("machines.yaml", "dispatch: {minutes: 10,", "dispatch: {minutes: 10, wrapping: 4,") ==
            Lines{"machines.yaml:11:25: dispatch.wrapping: unknown key; expected one of `minutes`, `hourly`"});
}

TEST_CASE("a misspelt optional key names the optional one") {
    REQUIRE(complaints_after("machines.yaml", "colours: 3", "colors: 3") ==
            Lines{"machines.yaml:6:79: converters.FG1.colors: unknown key; did you mean `colours`"});
}

TEST_CASE("a missing entry is reported at the key of the map that lacks it") {
    REQUIRE(complaints_after("machines.yaml", "setup: {minutes: 25, sheets: 40}", "setup: {minutes: 25}") ==
            Lines{"machines.yaml:7:9: converters.FG1.setup.sheets: missing: expected a whole number not below 0"});
}

TEST_CASE("a missing map is reported once, without the entries that it would have") {
    REQUIRE(complaints_after("machines.yaml", "setup: {minutes: 25, sheets: 40}, ", "") ==
            Lines{"machines.yaml:6:3: converters.FG1.setup: missing: expected a map"});
}

TEST_CASE("an error for a value of another type names the expected type") {
    REQUIRE(complaints_after("papers.yaml", "grammage: 135", "grammage: [135]") ==
            Lines{"papers.yaml:2:33: papers.KL135.grammage: wrong type: found a list, expected a number above 0 in "
                  "`g/m2`"});
    REQUIRE(complaints_after("plant.yaml", "shifts: [early, late]", "shifts: early") ==
            Lines{"plant.yaml:4:9: shifts: wrong type: found a text, expected a list"});
    REQUIRE(complaints_after("machines.yaml", "setup: {minutes: 25, sheets: 40}", "setup: 25") ==
            Lines{"machines.yaml:7:16: converters.FG1.setup: wrong type: found a text, expected a map"});
    REQUIRE(complaints_after("plant.yaml", "plant: Small Board", "plant: {name: Small Board}") ==
            Lines{"plant.yaml:1:8: plant: wrong type: found a map, expected a text"});
}

TEST_CASE("a key without a value is reported at the key") {
    REQUIRE(complaints_after("plant.yaml", "units: metric", "units:") ==
            Lines{"plant.yaml:3:1: units: wrong type: found nothing, expected one of `metric`, `us`"});
}

TEST_CASE("an empty text is no name") {
    REQUIRE(complaints_after("plant.yaml", "plant: Small Board", "plant: \"\"") ==
            Lines{"plant.yaml:1:8: plant: an empty text: expected a name"});
}

TEST_CASE("an error for a number out of range gives the range") {
    REQUIRE(complaints_after("machines.yaml", "run_waste: 0.018", "run_waste: 1.2") ==
            Lines{"machines.yaml:3:96: corrugators.C1.run_waste: out of range: found 1.2, expected a share from 0 to "
                  "below 1"});
}

TEST_CASE("what is no plain decimal is no number") {
    REQUIRE(complaints_after("machines.yaml", "sheets: 40", "sheets: 040") ==
            Lines{"machines.yaml:7:38: converters.FG1.setup.sheets: not a number: found `040`, expected a plain "
                  "decimal, or a decimal, a space and a unit"});
}

TEST_CASE("a low end above its high end is reported at the list") {
    REQUIRE(complaints_after("machines.yaml", "slit: [150, 2420]", "slit: [2420, 150]") ==
            Lines{"machines.yaml:2:67: corrugators.C1.slit: low above high: found 2420 and 150, expected [low, high]"});
}

TEST_CASE("a range that does not have two ends is reported") {
    REQUIRE(complaints_after("machines.yaml", "slit: [150, 2420]", "slit: [150]") ==
            Lines{"machines.yaml:2:67: corrugators.C1.slit: wrong type: found a list of 1, expected two numbers, [low, "
                  "high], each a number above 0 in `mm`"});
}

TEST_CASE("an end of a range that is not a number is reported once, with no error about the order of the ends") {
    REQUIRE(complaints_after("machines.yaml", "slit: [150, 2420]", "slit: [wide, 2420]") ==
            Lines{"machines.yaml:2:68: corrugators.C1.slit[1]: not a number: found `wide`, expected a plain decimal in "
                  "`mm`, or a decimal, a space and a unit"});
}

TEST_CASE("an error for an unknown choice lists the choices") {
    REQUIRE(complaints_after("plant.yaml", "units: metric", "units: imperial") ==
            Lines{"plant.yaml:3:8: units: not a choice: found `imperial`, expected one of `metric`, `us`"});
}

TEST_CASE("a day that the calendar does not have is no date") {
    REQUIRE(complaints_after("papers.yaml", "from: 2026-09-01", "from: 2026-02-29") ==
            Lines{"papers.yaml:3:62: papers.KL135.price[2].from: not a date: found `2026-02-29`, expected a day of the "
                  "calendar as YYYY-MM-DD"});
}

TEST_CASE("a table of the plant's codes holds at least one, none with a space at its end") {
    const PlantFolder folder;
    folder.write("boards.yaml", "boards: {}\n");
    REQUIRE(folder.complaints() == Lines{"boards.yaml:1:9: boards: an empty map: expected at least one entry"});
    REQUIRE(complaints_after("boards.yaml", "C-140:", "\"C-140 \":") ==
            Lines{"boards.yaml:4:3: boards.C-140 : a space at the end of a name: expected none"});
}

TEST_CASE("a long text is cut in the message that quotes it") {
    const std::string name(200, 'x');
    REQUIRE(complaints_after("plant.yaml", "units: metric", "units: " + name) ==
            Lines{"plant.yaml:3:8: units: not a choice: found `" + name.substr(0, 40) +
                  "...`, expected one of `metric`, `us`"});
}

TEST_CASE("all errors of all files are reported together, each file from its top") {
    const PlantFolder folder;
    folder.change("plant.yaml", "currency: EUR", "currency: EURO");
    folder.change("plant.yaml", "units: metric", "unit: metric");
    folder.change("papers.yaml", "grammage: 127", "grammage: -1");
    folder.change("flutes.yaml", "take_up: 1.43", "take_up: 2.43");
    folder.change("boards.yaml", "B-140: {plies: [KL135,", "B-140: {plies: [KL136,");
    folder.change("machines.yaml", "power: 420", "power: lots");
    folder.change("plugins.yaml", "scrap: process", "scrap: thread");
    REQUIRE(
        folder.complaints() ==
        Lines{"plant.yaml:1:1: units: missing: expected one of `metric`, `us`",
              "plant.yaml:2:11: currency: unknown currency: found `EURO`, expected a code of ISO 4217 such as `EUR`",
              "plant.yaml:3:1: unit: unknown key; did you mean `units`",
              "papers.yaml:4:34: papers.SC127.grammage: out of range: found -1, expected a number above 0 in `g/m2`",
              "flutes.yaml:3:16: flutes.C.take_up: out of range: found 2.43, expected a take-up from 1 to 2",
              "boards.yaml:2:19: boards.B-140.plies[1]: unknown paper: found `KL136`; expected one of `KL135`, "
              "`SC127`, `TL125`",
              "machines.yaml:4:68: corrugators.C1.power: not a number: found `lots`, expected a plain decimal in "
              "`kW`, or a decimal, a space and a unit",
              "plugins.yaml:6:20: isolation.scrap: not a choice: found `thread`, expected one of `process`, `host`"});
}

TEST_CASE("of very many errors the first hundred are shown, with the number of the others") {
    const PlantFolder folder;
    std::string widths;
    for (int i = 0; i < 300; ++i) widths += "-1, ";
    folder.change("papers.yaml", "use: liner, grammage: 135, moisture: 0.08, roll_widths: [1850, 2250]",
                  "use: liner, grammage: 135, moisture: 0.08, roll_widths: [" + widths + "]");
    const auto lines = folder.complaints();
    REQUIRE(lines.size() == 101);
    REQUIRE(lines.back() == "papers.yaml: 200 more errors are not shown");
}
