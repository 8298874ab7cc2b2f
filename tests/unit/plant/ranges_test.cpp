// The range of each fact of the plant: one value just outside, and where zero may stand, zero.
#include <catch2/catch.hpp>

#include "tests/unit/plant/plant_folder.hpp"

using namespace flutebook;
using fixture::complaints_after;

namespace {

struct Change {
    const char *file, *old_text, *new_text, *path;
};

// Refused with one complaint, out of range, at that path.
void require_out_of_range(const Change& change) {
    const auto lines = complaints_after(change.file, change.old_text, change.new_text);
    CAPTURE(change.new_text, lines);
    REQUIRE(lines.size() == 1);
    REQUIRE_THAT(lines[0], Catch::Contains(std::string(": ") + change.path + ": out of range: found "));
}

void require_fit(const Change& change) {
    const auto lines = complaints_after(change.file, change.old_text, change.new_text);
    CAPTURE(change.new_text, lines);
    REQUIRE(lines.empty());
}

constexpr const char* machines = "machines.yaml";
constexpr const char* papers = "papers.yaml";
constexpr const char* flutes = "flutes.yaml";

}  // namespace

TEST_CASE("a share lies from 0 to below 1") {
    require_out_of_range({machines, "run_waste: 0.018", "run_waste: 1", "corrugators.C1.run_waste"});
    require_out_of_range({machines, "run_waste: 0.018", "run_waste: 100 %", "corrugators.C1.run_waste"});
    require_out_of_range({machines, "roll_loss: 0.012", "roll_loss: -0.001", "corrugators.C1.roll_loss"});
    require_out_of_range({machines, "run_waste: 0.02,", "run_waste: 1.0,", "converters.DC1.run_waste"});
    require_out_of_range({"plant.yaml", "balance_tolerance: 0.005", "balance_tolerance: 1", "balance_tolerance"});
    require_out_of_range({"plant.yaml", "units: metric", "units: metric\nwaste_target: 9.5", "waste_target"});
    require_fit({machines, "run_waste: 0.018", "run_waste: 0", ""});
    require_fit({machines, "roll_loss: 0.012", "roll_loss: 0.999", ""});
}

TEST_CASE("moisture is at most a half") {
    require_out_of_range({papers, "moisture: 0.09", "moisture: 0.51", "papers.TL125.moisture"});
    require_out_of_range({"plant.yaml", "moisture: 0.10", "moisture: 10", "mills.Northweir.moisture"});
    require_fit({papers, "moisture: 0.09", "moisture: 0.5", ""});
}

TEST_CASE("a take-up lies from 1 to 2") {
    require_out_of_range({flutes, "take_up: 1.32", "take_up: 0.99", "flutes.B.take_up"});
    require_out_of_range({flutes, "take_up: 1.32", "take_up: 2.01", "flutes.B.take_up"});
    require_fit({flutes, "take_up: 1.32", "take_up: 1", ""});
}

TEST_CASE("counts are whole") {
    require_out_of_range({machines, "outs_max: 6", "outs_max: 6.5", "corrugators.C1.outs_max"});
    require_out_of_range({machines, "outs_max: 6", "outs_max: 0", "corrugators.C1.outs_max"});
    require_out_of_range({machines, "ups_max: 12", "ups_max: 0", "converters.DC1.ups_max"});
    require_out_of_range({machines, "sheets: 40", "sheets: 40.5", "converters.FG1.setup.sheets"});
    require_out_of_range({machines, "colours: 3", "colours: -1", "converters.FG1.colours"});
    require_fit({machines, "sheets: 40", "sheets: 0", ""});
    require_fit({machines, "outs_max: 6", "outs_max: 1.0", ""});
}

TEST_CASE("lengths, grammages and speeds are above 0") {
    require_out_of_range({papers, "grammage: 127", "grammage: 0", "papers.SC127.grammage"});
    require_out_of_range({flutes, "height: 2.5", "height: 0", "flutes.B.height"});
    require_out_of_range({machines, "single: 220", "single: 0", "corrugators.C1.speed.single"});
    require_out_of_range({machines, "speed: 9000", "speed: 0", "converters.FG1.speed"});
    require_out_of_range({machines, "chop: [450,", "chop: [0,", "corrugators.C1.chop[1]"});
    require_out_of_range({machines, "width: [250,", "width: [-1,", "converters.FG1.sheet.width[1]"});
}

TEST_CASE("what is added to a length may be nothing, but not less") {
    require_fit({flutes, "flap: 1.5", "flap: 0", ""});
    require_fit({machines, "trim_min: 30", "trim_min: 0", ""});
    require_fit({machines, "metres: 25", "metres: 0", ""});
    require_out_of_range({"boards.yaml", "{flute: B, paper: SC127}, TL125]}",
                          "{flute: B, paper: SC127}, TL125], caliper: 0}", "boards.B-140.caliper"});
    require_out_of_range({flutes, "flap: 1.5", "flap: -0.5", "allowances.B.flap"});
    require_out_of_range({machines, "trim_min: 30", "trim_min: -1", "corrugators.C1.trim_min"});
    require_out_of_range({machines, "edge: 12", "edge: -1", "converters.DC1.edge"});
}

TEST_CASE("prices are not below 0") {
    require_out_of_range({papers, "per_tonne: 510", "per_tonne: -1", "papers.SC127.price[1].per_tonne"});
    require_out_of_range({machines, "labour: 240", "labour: -1", "corrugators.C1.hourly.labour"});
    require_fit({papers, "per_tonne: 510", "per_tonne: 0", ""});
}

TEST_CASE("a number that no plant has is refused") {
    require_out_of_range({machines, "power: 420", "power: 10000000000000000", "corrugators.C1.power"});
}
