// A fit plant, read whole.
#include <catch2/catch.hpp>

#include "host/plant/plant_file.hpp"
#include "tests/unit/plant/plant_folder.hpp"

using namespace flutebook;
using namespace flutebook::base;
using namespace flutebook::orders;
using namespace flutebook::fields;
using namespace flutebook::plant;
using fixture::PlantFolder;

namespace {

// Where a key was given, which it was.
Place place_of(const Places& places, const std::string& path) {
    const auto found = places.find(path);
    REQUIRE(found != places.end());
    return found->second;
}

}  // namespace

TEST_CASE("a plant's own facts are read") {
    const auto plant = PlantFolder().read();
    REQUIRE(plant.name == "Small Board");
    REQUIRE(plant.currency == "EUR");
    REQUIRE(plant.currency_minor_units == 2);
    REQUIRE(plant.units == Units::metric);
    REQUIRE(plant.shifts == std::vector<std::string>{"early", "late"});
    REQUIRE(plant.balance_tolerance == 0.005);
    REQUIRE(plant.mills.size() == 1);
    REQUIRE(plant.mills[0].name == "Northweir");
    REQUIRE(plant.mills[0].moisture_limit == 0.10);
    REQUIRE(plant.mills[0].deduction == Mill::Deduction::dry_matter);
}

TEST_CASE("a plant may have a target for its waste, a share of the paper issued") {
    const PlantFolder folder;
    CHECK_FALSE(folder.read().waste_target);
    folder.change("plant.yaml", "units: metric", "units: metric\nwaste_target: 9.5 %");
    CHECK(folder.read().waste_target == 0.095);
}

TEST_CASE("a plant says how what leaves it looks: address, paper and decimal mark; its units say the paper else") {
    const PlantFolder folder;
    CHECK(folder.read().address.empty());
    CHECK(folder.read().page_size == PageSize::a4);
    CHECK(folder.read().decimal_mark == base::DecimalMark::point);
    folder.change("plant.yaml", "units: metric", "units: us");
    CHECK(folder.read().page_size == PageSize::letter);
    folder.change("plant.yaml", "units: us",
                  "units: us\naddress: [4 Flume Lane, Brackenholt]\npaper: a4\ndecimal: comma");
    const auto plant = folder.read();
    CHECK(plant.address == std::vector<std::string>{"4 Flume Lane", "Brackenholt"});
    CHECK(plant.page_size == PageSize::a4);
    CHECK(plant.decimal_mark == base::DecimalMark::comma);
    CHECK(shown_decimal_mark(folder.path()) == base::DecimalMark::comma);
    CHECK(shown_decimal_mark(folder.path() + "/none") == base::DecimalMark::point);
}

TEST_CASE("papers keep the order of their file, with their price of each day") {
    const auto plant = PlantFolder().read();
    REQUIRE(plant.papers.size() == 3);
    const auto& liner = plant.papers[0];
    REQUIRE(liner.code == "KL135");
    REQUIRE(liner.use == Paper::Use::liner);
    REQUIRE(plant.papers[1].use == Paper::Use::medium);
    REQUIRE(liner.grammage_gsm == 135);
    REQUIRE(liner.moisture == 0.08);
    REQUIRE(liner.roll_widths_mm == std::vector<double>{1850, 2250});
    REQUIRE(liner.price_on(*parse_date("2025-12-31")) == nullptr);
    REQUIRE(liner.price_on(*parse_date("2026-01-01"))->per_tonne == 640);
    REQUIRE(liner.price_on(*parse_date("2026-08-31"))->per_tonne == 640);
    REQUIRE(liner.price_on(*parse_date("2026-09-01"))->per_tonne == 668);
    REQUIRE(liner.price_on(*parse_date("2027-09-01"))->per_tonne == 668);
}

TEST_CASE("roll widths rise, however they were written") {
    const PlantFolder folder;
    folder.change("papers.yaml", "KL135: {use: liner, grammage: 135, moisture: 0.08, roll_widths: [1850, 2250]",
                  "KL135: {use: liner, grammage: 135, moisture: 0.08, roll_widths: [2250, 87 in, 1850]");
    REQUIRE(folder.read().papers[0].roll_widths_mm == std::vector<double>{1850, 2209.8, 2250});
}

TEST_CASE("flutes and the allowances of one or two of them are read") {
    const auto plant = PlantFolder().read();
    REQUIRE(plant.flutes.size() == 2);
    REQUIRE(plant.flutes[1].code == "C");
    REQUIRE(plant.flutes[1].take_up == 1.43);
    REQUIRE(plant.flutes[1].height_mm == 3.6);
    REQUIRE(plant.flutes[1].single_facer_gsm == 5);
    REQUIRE(plant.flutes[1].double_backer_gsm == 6);
    const auto* double_wall = plant.find_allowance("B+C", "0201");
    REQUIRE(double_wall != nullptr);
    REQUIRE(double_wall->panel_mm == 7);
    REQUIRE(double_wall->depth_mm == 14);
    REQUIRE(double_wall->flap_mm == 3.5);
    REQUIRE(double_wall->joint_mm == 3);
    REQUIRE(double_wall->tab_mm == 35);
    REQUIRE(double_wall->slot_mm == 9);
}

TEST_CASE("the allowances of a double wall serve it whichever flute lies outside") {
    const auto plant = PlantFolder().read();
    REQUIRE(plant.find_allowance("C+B", "0201") == plant.find_allowance("B+C", "0201"));
    REQUIRE(plant.find_allowance("C", "0201") == nullptr);
    REQUIRE(plant.find_allowance("B+B", "0201") == nullptr);
}

TEST_CASE("allowances for styles whose code begins so give what differs, and the longest beginning counts") {
    const PlantFolder folder;
    folder.change(
        "flutes.yaml", "allowances:\n",
        "allowances:\n  B 0427: {slot: 7.5}\n  B 04: {slot: 7, tab: 33}\n  C+B 02: {panel: 1, depth: 2, flap: "
        "3, joint: 4, tab: 5, slot: 6}\n");
    const auto plant = folder.read();
    const auto* of_any = plant.find_allowance("B", "0201");
    REQUIRE(of_any->slot_mm == 6);
    const auto* of_group = plant.find_allowance("B", "0410");
    REQUIRE(of_group->slot_mm == 7);
    REQUIRE(of_group->tab_mm == 33);
    REQUIRE(of_group->panel_mm == 3);
    REQUIRE(place_of(of_group->places, "panel").line == place_of(of_any->places, "panel").line);
    REQUIRE(place_of(of_group->places, "slot").line == 6);
    const auto* of_one = plant.find_allowance("B", "0427");
    REQUIRE(of_one->slot_mm == 7.5);
    REQUIRE(of_one->tab_mm == 33);
    // A double wall's other way round serves where it has none of its own for the style.
    REQUIRE(plant.find_allowance("C+B", "0201")->tab_mm == 5);
    REQUIRE(plant.find_allowance("C+B", "0427")->tab_mm == 35);
}

TEST_CASE("an allowance may have names beside the six, for the sums of styles") {
    const PlantFolder folder;
    folder.change("flutes.yaml", "allowances:\n", "allowances:\n  B 04: {tuck: 2}\n");
    folder.change("flutes.yaml", "tab: 30, slot: 6}", "tab: 30, slot: 6, lock: 1.5, tuck: 1}");
    const auto plant = folder.read();
    const auto& of_any = plant.find_allowance("B", "0201")->further;
    REQUIRE(of_any.size() == 2);
    REQUIRE(of_any[0].name == "lock");
    REQUIRE(of_any[0].mm == 1.5);
    REQUIRE(plant.find_allowance("B", "0410")->further[0].mm == 1.5);
    REQUIRE(plant.find_allowance("B", "0410")->further[1].mm == 2);
    REQUIRE(plant.find_allowance("B+C", "0410")->further.empty());
}

TEST_CASE("the sums of a plant's own style know its further allowances") {
    const PlantFolder folder;
    folder.change("flutes.yaml", "tab: 30, slot: 6}", "tab: 30, slot: 6, lock: 1.5}");
    folder.write("styles.yaml", "styles:\n  slip: {title: Slip, along: [B + lock], across: [L]}\n");
    REQUIRE(folder.read().find_style("slip") != nullptr);
}

TEST_CASE("a board may give its caliper") {
    const PlantFolder folder;
    folder.change("boards.yaml", "{flute: B, paper: SC127}, TL125]}",
                  "{flute: B, paper: SC127}, TL125], caliper: 2.9}");
    const auto plant = folder.read();
    REQUIRE(plant.find_board("B-140")->caliper_mm == 2.9);
    REQUIRE(plant.find_board("B-140")->caliper_place->line == 2);
    REQUIRE_FALSE(plant.find_board("BC-200")->caliper_mm.has_value());
}

TEST_CASE("a board names its plies outside first, and each medium says whether a second liner follows") {
    const auto plant = PlantFolder().read();
    const auto* board = plant.find_board("BC-200");
    REQUIRE(board != nullptr);
    REQUIRE(board->flutes == "B+C");
    REQUIRE(board->plies.size() == 5);
    REQUIRE(board->plies[0].paper == 0);
    REQUIRE_FALSE(board->plies[0].flute.has_value());
    REQUIRE(board->plies[1].paper == 1);
    REQUIRE(board->plies[1].flute == 0U);
    REQUIRE(board->plies[3].flute == 1U);
    REQUIRE(board->plies[1].has_second_liner);
    REQUIRE(board->plies[3].has_second_liner);
    REQUIRE_FALSE(board->plies[4].has_second_liner);
}

TEST_CASE("a single face may leave out the last liner") {
    const PlantFolder folder;
    folder.change("boards.yaml", "C-140: {plies: [KL135, {flute: C, paper: SC127}, TL125]}",
                  "C-140: {plies: [KL135, {flute: C, paper: SC127}]}");
    const auto plant = folder.read();
    REQUIRE(plant.boards[2].plies.size() == 2);
    REQUIRE_FALSE(plant.boards[2].plies[1].has_second_liner);
}

TEST_CASE("machines are read with their limits, rates and speeds") {
    const auto plant = PlantFolder().read();
    const auto& corrugator = plant.corrugators.at(0);
    REQUIRE(corrugator.code == "C1");
    REQUIRE(corrugator.roll_width_mm.low == 1400);
    REQUIRE(corrugator.roll_width_mm.high == 2500);
    REQUIRE(corrugator.trim_min_mm == 30);
    REQUIRE(corrugator.outs_max == 6);
    REQUIRE(corrugator.slit_mm.low == 150);
    REQUIRE(corrugator.chop_mm.high == 4500);
    REQUIRE(corrugator.speed_single_m_min == 220);
    REQUIRE(corrugator.speed_double_m_min == 160);
    REQUIRE(corrugator.order_change_min == 1.5);
    REQUIRE(corrugator.order_change_m == 25);
    REQUIRE(corrugator.run_waste == 0.018);
    REQUIRE(corrugator.roll_loss == 0.012);
    REQUIRE(corrugator.hourly.labour == 240);
    REQUIRE(corrugator.hourly.fixed == 380);
    REQUIRE(corrugator.power_kw == 420);
    const auto* gluer = plant.find_converter("FG1");
    REQUIRE(gluer != nullptr);
    REQUIRE(gluer->kind == Converter::Kind::folder_gluer);
    REQUIRE(gluer->length_mm.low == 300);
    REQUIRE(gluer->width_mm.high == 1150);
    REQUIRE(gluer->colours == 3);
    REQUIRE(gluer->ups_max == 1);
    REQUIRE(gluer->setup_min == 25);
    REQUIRE(gluer->setup_sheets == 40);
    REQUIRE(gluer->run_waste == 0.012);
    REQUIRE(gluer->speed_per_h == 9000);
    const auto* cutter = plant.find_converter("DC1");
    REQUIRE(cutter->between_mm == 8);
    REQUIRE(cutter->edge_mm == 12);
    REQUIRE(cutter->ups_max == 12);
    REQUIRE(plant.dispatch.minutes == 10);
    REQUIRE(plant.dispatch.hourly.labour == 30);
}

TEST_CASE("a slitter, a stitcher and a hand station are read like other converters") {
    const PlantFolder folder;
    folder.change("machines.yaml", "kind: die-cutter", "kind: slitter");
    folder.change("machines.yaml", "between: 8, edge: 12,\n        ups_max: 12, ", "ups_max: 12, ");
    folder.change("machines.yaml", "kind: folder-gluer", "kind: stitcher");
    auto plant = folder.read();
    REQUIRE(plant.find_converter("DC1")->kind == Converter::Kind::slitter);
    REQUIRE(plant.find_converter("DC1")->ups_max == 12);
    REQUIRE(plant.find_converter("DC1")->between_mm == 0);
    REQUIRE(plant.find_converter("FG1")->kind == Converter::Kind::stitcher);
    folder.change("machines.yaml", "kind: stitcher", "kind: hand");
    plant = folder.read();
    REQUIRE(plant.find_converter("FG1")->kind == Converter::Kind::hand);
    REQUIRE(plant.find_converter("FG1")->speed_per_h == 9000);
}

TEST_CASE("a folder-gluer says whether it cuts flaps to unequal depth") {
    const PlantFolder folder;
    REQUIRE_FALSE(folder.read().find_converter("FG1")->cuts_flaps);
    folder.change("machines.yaml", "colours: 3,", "colours: 3, cuts_flaps: true,");
    REQUIRE(folder.read().find_converter("FG1")->cuts_flaps);
}

TEST_CASE("a die cutter that says nothing of boxes on a sheet holds one, edge to edge") {
    const PlantFolder folder;
    folder.change("machines.yaml", "between: 8, edge: 12,\n        ups_max: 12, ", "\n        ");
    const auto plant = folder.read();
    REQUIRE(plant.converters[1].between_mm == 0);
    REQUIRE(plant.converters[1].edge_mm == 0);
    REQUIRE(plant.converters[1].ups_max == 1);
}

TEST_CASE("the models to load are read with their settings as written, and what is said beside them") {
    const auto plant = PlantFolder().read();
    REQUIRE(plant.models.size() == 3);
    REQUIRE(plant.models[1].id == "scrap");
    REQUIRE(std::get<GivenText>(plant.models[1].find("handling")->value).text == "18");
    REQUIRE(plant.preferences.size() == 1);
    REQUIRE(plant.preferences[0].name == "step.run_waste");
    REQUIRE(plant.preferences[0].model == "paper");
    REQUIRE(plant.isolated.size() == 1);
    REQUIRE(plant.isolated[0].model == "scrap");
    REQUIRE(plant.pinned.size() == 1);
    REQUIRE(plant.pinned[0].model == "run");
    REQUIRE(plant.pinned[0].sha256 == "0123456789abcdef0123456789abcdef0123456789abcdef0123456789abcdef");
}

TEST_CASE("every fact knows the file, line and column where it was given") {
    const PlantFolder folder;
    const auto plant = folder.read();
    const auto setup = place_of(plant.converters[0].places, "setup.sheets");
    REQUIRE(setup.file == folder.path("machines.yaml"));
    REQUIRE(setup.line == 7);
    REQUIRE(setup.column == 38);
    REQUIRE(place_of(plant.papers[0].places, "grammage").line == 2);
    REQUIRE(plant.papers[0].prices[1].place.line == 3);
    REQUIRE(place_of(plant.flutes[0].places, "adhesive.single_facer").line == 2);
    REQUIRE(place_of(plant.corrugators[0].places, "speed.single").line == 3);
    REQUIRE(place_of(plant.corrugators[0].places, "hourly.labour").line == 4);
    REQUIRE(place_of(plant.places, "units").line == 3);
    REQUIRE(place_of(plant.dispatch.places, "minutes").line == 11);
    REQUIRE(plant.converters[0].places.find("ups_max") == plant.converters[0].places.end());
}

TEST_CASE("the plant in the folder where one stands names its files without a folder") {
    const PlantFolder folder;
    const auto before = std::filesystem::current_path();
    std::filesystem::current_path(folder.path());
    const auto plant = read_plant(".");
    std::filesystem::current_path(before);
    REQUIRE(place_of(plant.places, "units").file == "plant.yaml");
}

TEST_CASE("a number may carry its own unit, and the plant's currency one of its own") {
    const PlantFolder folder;
    folder.change("papers.yaml", "TL125: {use: liner, grammage: 125", "TL125: {use: liner, grammage: 26 lb/MSF");
    folder.change("papers.yaml", "per_tonne: 540", "per_tonne: 0.54 EUR/kg");
    folder.change("papers.yaml", "moisture: 0.09", "moisture: 9 %");
    folder.change("machines.yaml", "single: 220", "single: 700 ft/min");
    folder.change("machines.yaml", "speed: 9000", "speed: 150 sheets/min");
    const auto plant = folder.read();
    REQUIRE(plant.papers[2].grammage_gsm == Approx(126.943));
    REQUIRE(plant.papers[2].prices[0].per_tonne == Approx(540).epsilon(1e-14));
    REQUIRE(plant.papers[2].moisture == Approx(0.09).epsilon(1e-14));
    REQUIRE(plant.corrugators[0].speed_single_m_min == Approx(213.36).epsilon(1e-14));
    REQUIRE(plant.converters[0].speed_per_h == 9000);
}

TEST_CASE("a plant keeps the texts that it was read from, whatever becomes of its files") {
    const PlantFolder folder;
    const auto plant = folder.read();
    folder.change("papers.yaml", "per_tonne: 540", "per_tonne: 541");
    REQUIRE(plant.files.size() == plant_file_names().size());
    REQUIRE(plant.files.at("papers.yaml").find("per_tonne: 540") != std::string::npos);
    REQUIRE(read_plant(folder.path(), plant.files).papers[2].prices[0].per_tonne == 540);
}

TEST_CASE("what is no code of a currency in force has no minor unit") {
    for (const std::string text : {"", "EU", "EURO", "eur", "XXX", "XAU", "R D", "DEM", "R E"}) {
        CAPTURE(text);
        REQUIRE_FALSE(minor_units(text).has_value());
    }
    REQUIRE(minor_units("EUR") == 2);
}
