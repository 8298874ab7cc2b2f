// A board that a supplier delivers as sheets, in boards.yaml.
#include <catch2/catch.hpp>

#include "host/plant/machine_list.hpp"
#include "host/plant/unusual_numbers.hpp"
#include "tests/unit/plant/plant_folder.hpp"

using namespace flutebook;
using fixture::complaints_after;
using fixture::Lines;
using fixture::PlantFolder;

namespace {

const std::string made_here = "C-140: {plies: [KL135, {flute: C, paper: SC127}, TL125]}";
const std::string bought =
    "C-140: {bought: {from: Northlea Sheets, flute: B, grammage: 520, caliper: 2.9, waste: 0.02, "
    "price: [{from: 2026-01-01, per_m2: 0.41}, {from: 2026-09-01, per_m2: 0.52}]}}";

std::string with(const std::string& old_text, const std::string& new_text) {
    std::string result = bought;
    const auto at = result.find(old_text);
    REQUIRE(at != std::string::npos);
    return result.replace(at, old_text.size(), new_text);
}

// The one complaint after a change of the board, from its path on.
std::string complaint(const std::string& board) {
    const Lines lines = complaints_after("boards.yaml", made_here, board);
    INFO(board);
    for (const std::string& line : lines) UNSCOPED_INFO(line);
    REQUIRE(lines.size() == 1);
    const auto path = lines.front().find("boards.C-140");
    REQUIRE(path != std::string::npos);
    return lines.front().substr(path);
}

plant::Plant plant_with(const std::string& board) {
    const PlantFolder folder;
    folder.change("boards.yaml", made_here, board);
    return folder.read();
}

}  // namespace

TEST_CASE("a board that is bought is one paper without a flute, priced by the mass that its square metre has") {
    const plant::Plant plant = plant_with(bought);
    const plant::Board& board = *plant.find_board("C-140");
    REQUIRE(board.is_bought());
    CHECK(plant.supplier_of(board)->code == "Northlea Sheets");
    CHECK(plant.supplier_of(board)->run_waste == 0.02);
    CHECK(board.flutes == "B");
    CHECK(board.media() == 1);
    CHECK(plant::caliper_mm(plant, board) == 2.9);
    REQUIRE(board.plies.size() == 1);
    const plant::Paper& sheet = plant.paper(board.plies.front().paper);
    CHECK(sheet.grammage_gsm == 520);
    // 0.52 for 520 g is 1000 a tonne.
    CHECK(sheet.price_on(base::parse_date("2026-09-01").value())->per_tonne == Approx(1000).epsilon(1e-12));
    CHECK(sheet.price_on(base::parse_date("2026-08-31").value())->per_m2 == 0.41);
}

TEST_CASE("who delivers a board is no machine of the plant, nor the board a paper of it") {
    const plant::Plant plant = plant_with(bought);
    CHECK(plant.find_corrugator("Northlea Sheets") == nullptr);
    CHECK(plant.find_paper("C-140") == nullptr);
    CHECK(plant::machine_code(plant, plant::machine_index(plant, plant.suppliers.front())) == "Northlea Sheets");
}

TEST_CASE("a board that is bought may be a double wall, and then has both flutes' allowances") {
    const plant::Plant plant = plant_with(with("flute: B", "flute: B+C"));
    CHECK(plant.find_board("C-140")->flutes == "B+C");
    CHECK(plant.find_board("C-140")->media() == 2);
}

TEST_CASE("a board is run here or bought, not both, and says once how thick it is") {
    CHECK(complaint(with("{bought", "{plies: [KL135, {flute: C, paper: SC127}, TL125], bought")) ==
          "boards.C-140.bought: both `plies` and `bought` are given: a board is run here or bought; take one out");
    CHECK(complaint(with("{bought", "{caliper: 3, bought")) ==
          "boards.C-140.caliper: not beside `bought`, which says how thick the sheets are; take it out");
}

TEST_CASE("a board that is bought is of flutes that the plant knows") {
    CHECK(complaint(with("flute: B", "flute: D")) ==
          "boards.C-140.bought.flute: unknown flute: found `D`; expected one of `B`, `C`");
    CHECK(complaint(with("flute: B", "flute: B+C+B")) ==
          "boards.C-140.bought.flute: too many flutes: found `B+C+B`, expected one, or two as `B+C`");
}

TEST_CASE("the numbers of a board that is bought are such as can be") {
    CHECK(complaint(with("per_m2: 0.41", "per_m2: 0")) ==
          "boards.C-140.bought.price[1].per_m2: out of range: found 0, expected a number above 0 in `money/m2`");
    CHECK(complaint(with("grammage: 520", "grammage: 0")) ==
          "boards.C-140.bought.grammage: out of range: found 0, expected a number above 0 in `g/m2`");
    CHECK(complaint(with("caliper: 2.9", "caliper: -1")) ==
          "boards.C-140.bought.caliper: out of range: found -1, expected a number above 0 in `mm`");
    CHECK(complaint(with("waste: 0.02", "waste: 1")) ==
          "boards.C-140.bought.waste: out of range: found 1, expected a share from 0 to below 1");
}

TEST_CASE("a board that is bought lacks no key and has none that is unknown") {
    CHECK(complaint(with("waste: 0.02, ", "")) ==
          "boards.C-140.bought.waste: missing: expected a share from 0 to below 1");
    CHECK(complaint(with("waste: 0.02", "waste: 0.02, moisture: 0.08")) ==
          "boards.C-140.bought.moisture: unknown key; expected one of `from`, `flute`, `grammage`, `caliper`, `waste`, "
          "`price`");
}

TEST_CASE("prices of a board that is bought stand by rising dates") {
    CHECK(complaint(with("2026-09-01", "2025-09-01")) ==
          "boards.C-140.bought.price[2].from: out of order: found 2025-09-01 after 2026-01-01, expected rising dates");
}

TEST_CASE("who delivers a board is not called as a machine is, nor the board as a paper is") {
    CHECK(complaint(with("Northlea Sheets", "C1")) ==
          "boards.C-140.bought.from: not free as a supplier's name: `C1` is a machine of the plant; give the supplier "
          "another name");
    CHECK(complaint(with("Northlea Sheets", "floor")) ==
          "boards.C-140.bought.from: not free as a supplier's name: `floor` is an account; give the supplier another "
          "name");
    std::string called = bought;
    called.replace(0, 5, "KL135");
    const Lines lines = complaints_after("boards.yaml", made_here, made_here + "\n  " + called);
    REQUIRE(lines.size() == 1);
    CHECK(
        lines.front().ends_with("boards.KL135.bought: not free as the name of a bought board: a paper is called "
                                "`KL135` too; give the board another name"));
}

TEST_CASE("unusual numbers of a board that is bought are told by its own path") {
    const auto warnings = plant::unusual_numbers(plant_with(with("per_m2: 0.41", "per_m2: 41")));
    REQUIRE(warnings.size() == 1);
    CHECK(warnings.front().text == "boards.C-140.bought.price.per_m2: unusual: found 41, usually 0.1 to 5 EUR/m2");
}
