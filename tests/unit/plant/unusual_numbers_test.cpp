// Slips of the pen in a plant's files: numbers that can be, and seldom are.
#include "host/plant/unusual_numbers.hpp"

#include <catch2/catch.hpp>

#include "tests/unit/plant/plant_folder.hpp"

using namespace flutebook;
using fixture::Lines;
using fixture::PlantFolder;

namespace {

// `file:line:column: text`, named from within the folder. The files are fit all the same.
Lines warnings(const PlantFolder& folder) {
    Lines result;
    for (const base::Warning& warning : plant::unusual_numbers(folder.read())) {
        const std::string line = warning.at + ": " + warning.text;
        REQUIRE(line.starts_with(folder.path() + "/"));
        result.push_back(line.substr(folder.path().size() + 1));
    }
    return result;
}

Lines warnings_after(const std::string& file, const std::string& old_text, const std::string& new_text) {
    const PlantFolder folder;
    folder.change(file, old_text, new_text);
    return warnings(folder);
}

}  // namespace

TEST_CASE("a plant whose numbers are usual is not warned") {
    CHECK(warnings(PlantFolder()).empty());
}

TEST_CASE("a paper at 0.5 a tonne is warned of at its price") {
    CHECK(warnings_after("papers.yaml", "per_tonne: 510", "per_tonne: 0.5") ==
          Lines{"papers.yaml:5:49: papers.SC127.price.per_tonne: unusual: found 0.5, usually 100 to 3000 EUR/t"});
}

TEST_CASE("a paper far from the others is warned of where its price alone could be right") {
    const Lines found = warnings_after("papers.yaml", "per_tonne: 510", "per_tonne: 2700");
    REQUIRE(found.size() == 1);
    CHECK(found[0] ==
          "papers.yaml:5:49: papers.SC127.price.per_tonne: unusual: found 2700, 4.0 times the 668 EUR/t that is the "
          "middle of the others; is a decimal point missing?");
}

TEST_CASE("a rate ten times the others' is warned of at its place") {
    CHECK(warnings_after("machines.yaml", "labour: 95", "labour: 950") ==
          Lines{"machines.yaml:7:91: converters.FG1.hourly.labour: unusual: found 950, 10.6 times the 90 EUR/h that is "
                "the middle of the others; is a decimal point missing?"});
    CHECK(warnings_after("machines.yaml", "labour: 240", "labour: 2400").size() == 1);
}

TEST_CASE("a list where a decimal comma was meant is warned of, with both ways to write the number") {
    CHECK(warnings_after("machines.yaml", "roll_width: [1400, 2500]", "roll_width: [2,500]") ==
          Lines{"machines.yaml:2:20: corrugators.C1.roll_width: unusual: found 2 to 500, usually 300 to 3600 mm; if "
                "`2,500` is one number, write 2500 or 2.500"});
    const PlantFolder folder;
    folder.change("papers.yaml", "0.09, roll_widths: [1850, 2250]", "0.09, roll_widths: [2,250]");
    const Lines found = warnings(folder);
    REQUIRE(found.size() == 2);
    CHECK(found[0] ==
          "papers.yaml:6:67: papers.TL125.roll_widths: unusual: found 2, usually 300 to 3600 mm; if `2,250` "
          "is one number, write 2250 or 2.250");
}

TEST_CASE("speeds, minutes, waste, grammage and the like are each held against what is usual, at their places") {
    struct Slip {
        const char *file, *old_text, *new_text, *start;
    };
    const std::vector<Slip> slips = {
        {"machines.yaml", "single: 220", "single: 2200", "machines.yaml:3:24: corrugators.C1.speed.single: "},
        {"machines.yaml", "speed: 9000", "speed: 9", "machines.yaml:7:68: converters.FG1.speed: "},
        {"machines.yaml", "setup: {minutes: 25", "setup: {minutes: 2500",
         "machines.yaml:7:26: converters.FG1.setup.minutes: "},
        {"machines.yaml", "run_waste: 0.012", "run_waste: 0.3", "machines.yaml:7:54: converters.FG1.run_waste: "},
        {"machines.yaml", "roll_loss: 0.012", "roll_loss: 0.5", "machines.yaml:4:19: corrugators.C1.roll_loss: "},
        {"machines.yaml", "metres: 25", "metres: 2500", "machines.yaml:3:80: corrugators.C1.order_change.metres: "},
        {"papers.yaml", "grammage: 127", "grammage: 1.27", "papers.yaml:4:34: papers.SC127.grammage: "},
        {"papers.yaml", "moisture: 0.09", "moisture: 0.4", "papers.yaml:6:48: papers.TL125.moisture: "},
        {"flutes.yaml", "single_facer: 4.5", "single_facer: 45", "flutes.yaml:2:60: flutes.B.adhesive.single_facer: "},
        {"flutes.yaml", "take_up: 1.32", "take_up: 1.9", "flutes.yaml:2:16: flutes.B.take_up: "},
        {"flutes.yaml", "flap: 1.5", "flap: 150", "flutes.yaml:5:35: allowances.B.flap: "},
        {"plant.yaml", "tolerance: 0.005", "tolerance: 0.5", "plant.yaml:5:20: balance_tolerance: "},
        {"plant.yaml", "units: metric", "units: metric\nwaste_target: 0.95", "plant.yaml:4:15: waste_target: "},
        {"plant.yaml", "moisture: 0.10", "moisture: 0.5", "plant.yaml:7:25: mills.Northweir.moisture: "},
    };
    for (const Slip& slip : slips) {
        CAPTURE(slip.new_text);
        const Lines found = warnings_after(slip.file, slip.old_text, slip.new_text);
        REQUIRE(found.size() == 1);
        CHECK_THAT(found[0], Catch::StartsWith(slip.start) && Catch::Contains("unusual: found "));
    }
}

TEST_CASE("usual ranges in money follow a currency that is not worth about a euro") {
    PlantFolder folder;
    folder.change("plant.yaml", "currency: EUR", "currency: HUF");
    for (const auto& [old_text, new_text] : {std::pair{"per_tonne: 640", "per_tonne: 256000"},
                                             {"per_tonne: 668", "per_tonne: 267200"},
                                             {"per_tonne: 510", "per_tonne: 204000"},
                                             {"per_tonne: 540", "per_tonne: 216000"}})
        folder.change("papers.yaml", old_text, new_text);
    for (const auto& [old_text, new_text] : {std::pair{"labour: 240, fixed: 380", "labour: 96000, fixed: 152000"},
                                             {"labour: 95, fixed: 120", "labour: 38000, fixed: 48000"},
                                             {"labour: 90, fixed: 150", "labour: 36000, fixed: 60000"},
                                             {"labour: 30, fixed: 5", "labour: 12000, fixed: 2000"}})
        folder.change("machines.yaml", old_text, new_text);
    CHECK(warnings(folder).empty());
    folder.change("machines.yaml", "labour: 12000", "labour: 30");
    const Lines found = warnings(folder);
    REQUIRE(found.size() == 1);
    CHECK_THAT(found[0], Catch::StartsWith("machines.yaml:11:42: dispatch.hourly.labour: unusual: found 30, usually "));
}
