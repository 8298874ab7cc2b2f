// What one file of the plant says of another, and what a plant must not call or combine.
#include <catch2/catch.hpp>
#include <filesystem>

#include "host/base/errors.hpp"
#include "tests/unit/plant/plant_folder.hpp"

using namespace flutebook;
using fixture::complaints_after;
using fixture::Lines;
using fixture::PlantFolder;

namespace {

Lines complaints_of_plies(const std::string& plies) {
    return complaints_after("boards.yaml", "C-140: {plies: [KL135, {flute: C, paper: SC127}, TL125]}",
                            "C-140: {plies: " + plies + "}");
}

}  // namespace

TEST_CASE("a board of an unknown paper or flute is told where it names it") {
    REQUIRE(complaints_of_plies("[KL135, {flute: D, paper: SC172}, TL125]") ==
            Lines{"boards.yaml:4:34: boards.C-140.plies[2].flute: unknown flute: found `D`; expected one of `B`, `C`",
                  "boards.yaml:4:44: boards.C-140.plies[2].paper: unknown paper: found `SC172`; expected one of "
                  "`KL135`, `SC127`, `TL125`"});
}

TEST_CASE("a paper is used as what it is") {
    REQUIRE(complaints_of_plies("[SC127, {flute: C, paper: KL135}, TL125]") ==
            Lines{"boards.yaml:4:19: boards.C-140.plies[1]: a medium as a liner: found `SC127`; write `{flute: ..., "
                  "paper: ...}` or name a liner",
                  "boards.yaml:4:44: boards.C-140.plies[2].paper: a liner as a medium: found `KL135`; name a medium"});
}

TEST_CASE("liners and media alternate, a liner first") {
    REQUIRE(complaints_of_plies("[{flute: C, paper: SC127}, TL125]") ==
            Lines{"boards.yaml:4:19: boards.C-140.plies[1]: a medium out of turn: expected a liner here; liner and "
                  "medium alternate, a liner first"});
    REQUIRE(complaints_of_plies("[KL135, TL125]") ==
            Lines{"boards.yaml:4:26: boards.C-140.plies[2]: a liner out of turn: expected a medium here, as `{flute: "
                  "..., paper: ...}`"});
}

TEST_CASE("a board has one medium or two") {
    REQUIRE(complaints_of_plies("[KL135]") ==
            Lines{"boards.yaml:4:18: boards.C-140.plies: not a board: found 0 fluted media, expected 1 or 2"});
    const std::string wall = "{flute: C, paper: SC127}, TL125";
    REQUIRE(complaints_of_plies("[KL135, " + wall + ", " + wall + ", " + wall + "]") ==
            Lines{"boards.yaml:4:18: boards.C-140.plies: not a board: found 3 fluted media, expected 1 or 2"});
    REQUIRE(complaints_of_plies("[]") ==
            Lines{"boards.yaml:4:18: boards.C-140.plies: an empty list: expected at least one entry"});
}

TEST_CASE("an allowance is for flutes that the plant has, one or two") {
    REQUIRE(complaints_after("flutes.yaml", "  B+C:", "  B+E:") ==
            Lines{"flutes.yaml:6:3: allowances.B+E: unknown flute: found `E`; expected one of `B`, `C`"});
    REQUIRE(complaints_after("flutes.yaml", "  B+C:", "  B+C+B:") ==
            Lines{"flutes.yaml:6:3: allowances.B+C+B: too many flutes: expected one, or two joined by `+`"});
    REQUIRE(complaints_after("flutes.yaml", "  C: {take_up", "  B+B: {}\n  C: {take_up").front() ==
            "flutes.yaml:3:3: flutes.B+B: not a flute's name: expected one flute, without `+` or a space");
}

TEST_CASE("an allowance for some styles leaves out only what another entry of its flutes gives") {
    const Lines lines = complaints_after("flutes.yaml", "  B+C:", "  C 04: {slot: 7}\n  B+C:");
    REQUIRE(lines == Lines{"flutes.yaml:6:3: allowances.C 04.panel: missing: expected a number not below 0 in `mm`"});
    REQUIRE(
        complaints_after("flutes.yaml", "  B+C:", "  \"B  04\": {slot: 7}\n  B+C:") ==
        Lines{"flutes.yaml:6:3: allowances.B  04: two spaces in a name: expected flutes, one space, the beginning of "
              "a style's code"});
    REQUIRE(complaints_after("flutes.yaml", "  B+C:", "  E 04: {slot: 7}\n  B+C:").front() ==
            "flutes.yaml:6:3: allowances.E 04: unknown flute: found `E`; expected one of `B`, `C`");
}

TEST_CASE("a further allowance has a name of its own, and no misspelt one of the six") {
    const auto complaint = [](const std::string& allowance) {
        return complaints_after("flutes.yaml", "  B+C:", "  B 04: {" + allowance + "}\n  B+C:");
    };
    REQUIRE(complaint("slott: 7") ==
            Lines{"flutes.yaml:6:10: allowances.B 04.slott: unknown allowance: did you mean `slot`"});
    REQUIRE(complaint("slot: 7, slott: 3").empty());
    REQUIRE(complaint("min: 7") == Lines{"flutes.yaml:6:10: allowances.B 04.min: not free as an allowance's name: it "
                                         "means something else in the sums of a style"});
    REQUIRE(complaint("2nd: 7") == Lines{"flutes.yaml:6:10: allowances.B 04.2nd: not a name for an allowance: expected "
                                         "a letter, then letters, digits or `_`"});
    REQUIRE(complaint("lock: -1") ==
            Lines{"flutes.yaml:6:16: allowances.B 04.lock: out of range: found -1, expected a number not below 0 in "
                  "`mm`"});
}

TEST_CASE("a file that cannot be read is no reason to doubt what refers to it") {
    const PlantFolder folder;
    folder.write("papers.yaml", "papers: [\n");
    REQUIRE(folder.complaints().size() == 1);
    folder.remove("papers.yaml");
    REQUIRE(folder.complaints() == Lines{"papers.yaml: no such file"});
}

TEST_CASE("price lists have rising dates, and at least one") {
    REQUIRE(complaints_after("papers.yaml", "from: 2026-09-01", "from: 2026-01-01") ==
            Lines{"papers.yaml:3:62: papers.KL135.price[2].from: out of order: found 2026-01-01 after 2026-01-01, "
                  "expected rising dates"});
    REQUIRE(complaints_after("papers.yaml", "[{from: 2026-01-01, per_tonne: 510}]", "[]") ==
            Lines{"papers.yaml:5:18: papers.SC127.price: an empty list: expected at least one entry"});
}

TEST_CASE("a roll width or a shift is named once") {
    REQUIRE(complaints_after("papers.yaml", "moisture: 0.09, roll_widths: [1850, 2250]",
                             "moisture: 0.09, roll_widths: [1850, 2250, 1850 mm]") ==
            Lines{"papers.yaml:6:80: papers.TL125.roll_widths[3]: named twice: expected each roll width once"});
    REQUIRE(complaints_after("plant.yaml", "shifts: [early, late]", "shifts: [early, early]") ==
            Lines{"plant.yaml:4:17: shifts[2]: named twice: found `early`, expected each shift once"});
}

TEST_CASE("a machine's code is its own among corrugators and converters") {
    REQUIRE(complaints_after("machines.yaml", "  FG1: {kind", "  C1: {kind") ==
            Lines{"machines.yaml:6:3: converters.C1: not free as a machine's code: a corrugator is called `C1` too"});
}

TEST_CASE("a machine is not called like a place of the account") {
    for (const std::string name : {"dispatch", "floor", "loose-scrap", "bale-yard", "finished"}) {
        REQUIRE(complaints_after("machines.yaml", "  FG1: {kind", "  " + name + ": {kind") ==
                Lines{"machines.yaml:6:3: converters." + name + ": not free as a machine's code: found `" + name +
                      "`; name it otherwise"});
    }
}

TEST_CASE("only a die cutter or a slitter holds more than one box a sheet") {
    const std::string why =
        ": not for this kind of machine: only a die cutter or a slitter holds more than one box a sheet; take it out";
    REQUIRE(complaints_after("machines.yaml", "colours: 3,", "colours: 3, ups_max: 4, between: 8, edge: 1,") ==
            Lines{"machines.yaml:6:91: converters.FG1.ups_max" + why,
                  "machines.yaml:6:103: converters.FG1.between" + why,
                  "machines.yaml:6:115: converters.FG1.edge" + why});
    REQUIRE(complaints_after("machines.yaml", "kind: die-cutter", "kind: printer").size() == 3);
}

TEST_CASE("a slitter leaves nothing between two blanks, and may hold several") {
    const auto complaints = complaints_after("machines.yaml", "kind: die-cutter", "kind: slitter");
    REQUIRE(complaints.size() == 2);
    for (const auto& complaint : complaints)
        REQUIRE(complaint.find("only a die cutter leaves board between blanks and at the edge; take it out") !=
                std::string::npos);
}

TEST_CASE("only a folder-gluer cuts flaps") {
    REQUIRE(complaints_after("machines.yaml", "colours: 2,", "colours: 2, cuts_flaps: true,") ==
            Lines{"machines.yaml:8:89: converters.DC1.cuts_flaps: not for this kind of machine: only a folder-gluer "
                  "cuts the flaps that it folds; take it out"});
    REQUIRE(complaints_after("machines.yaml", "colours: 3,", "colours: 3, cuts_flaps: yes,") ==
            Lines{"machines.yaml:6:103: converters.FG1.cuts_flaps: not a choice: found `yes`, expected one of `false`, "
                  "`true`"});
}

TEST_CASE("an unknown kind of machine is told once") {
    REQUIRE(complaints_after("machines.yaml", "kind: die-cutter", "kind: press") ==
            Lines{"machines.yaml:8:15: converters.DC1.kind: not a choice: found `press`, expected one of `printer`, "
                  "`die-cutter`, `folder-gluer`, `slitter`, `stitcher`, `hand`"});
}

TEST_CASE("a currency is a code of ISO 4217") {
    REQUIRE(complaints_after("plant.yaml", "currency: EUR", "currency: eur") ==
            Lines{"plant.yaml:2:11: currency: unknown currency: found `eur`, expected a code of ISO 4217 such as "
                  "`EUR`"});
}

TEST_CASE("a model is listed once, as a map of its settings under a model's id") {
    REQUIRE(complaints_after("plugins.yaml", "- paper: {}", "- run: {}").front() ==
            "plugins.yaml:4:5: plugins[3].run: listed twice: expected each model once");
    REQUIRE(complaints_after("plugins.yaml", "- paper: {}", "- paper").front() ==
            "plugins.yaml:4:5: plugins[3]: no settings: expected a map, as `paper: {}`");
    REQUIRE(complaints_after("plugins.yaml", "- run: {}", "- run: 5") ==
            Lines{"plugins.yaml:2:10: plugins[1].run: wrong type: found a text, expected a map"});
    REQUIRE(complaints_after("plugins.yaml", "- paper: {}", "- {paper: {}, starch: {}}") ==
            Lines{"plugins.yaml:4:5: plugins[3]: not one model: found 2 in one entry, expected `- model: {settings}`"});
    REQUIRE(
        complaints_after("plugins.yaml", "- run: {}", "- run: {}\n  - ../evil: {}") ==
        Lines{"plugins.yaml:3:5: plugins[2].../evil: not a model's id: expected lower-case letters, digits, `-` and "
              "`_`"});
}

TEST_CASE("what stands beside the list of models names models of the list") {
    REQUIRE(complaints_after("plugins.yaml", "prefer: {step.run_waste: paper}", "prefer: {step.run_waste: papr}") ==
            Lines{"plugins.yaml:5:26: prefer.step.run_waste: unknown model: found `papr`; did you mean `paper`"});
    REQUIRE(complaints_after("plugins.yaml", "isolation: {scrap: process}", "isolation: {scrip: process}") ==
            Lines{"plugins.yaml:6:13: isolation.scrip: unknown model: found `scrip`; did you mean `scrap`"});
    REQUIRE(complaints_after("plugins.yaml", "sha256: {run: 0123", "sha256: {ran: 0123") ==
            Lines{"plugins.yaml:7:10: sha256.ran: unknown model: found `ran`; did you mean `run`"});
    REQUIRE(complaints_after("plugins.yaml", "sha256: {run: 0123", "sha256: {run: 123") ==
            Lines{"plugins.yaml:7:15: sha256.run: not a SHA-256: found "
                  "`123456789abcdef0123456789abcdef012345678...`, expected 64 hexadecimal digits"});
}

TEST_CASE("a folder without any of a plant's files is told in one line") {
    const std::filesystem::path empty = std::filesystem::temp_directory_path() / "flutebook-no-plant";
    std::filesystem::create_directories(empty);
    try {
        static_cast<void>(read_plant(empty.string()));
        FAIL("read as a plant");
    } catch (const InputError& error) {
        REQUIRE(error.lines() ==
                Lines{empty.string() + ": no plant: found none of plant.yaml, papers.yaml, flutes.yaml, boards.yaml, "
                                       "machines.yaml, plugins.yaml; name the folder of a plant's files: --plant DIR"});
    }
}

TEST_CASE("a folder that is not there is told as one error") {
    try {
        static_cast<void>(plant::read_plant("/nowhere/at/all"));
        FAIL("a plant was read from nowhere");
    } catch (const InputError& error) {
        REQUIRE(error.lines() == Lines{"/nowhere/at/all: no such folder, expected the folder of a plant"});
    }
}

TEST_CASE("a model that serves under another id is named by a model's id") {
    REQUIRE(complaints_after("plugins.yaml", "- paper: {}", "- paper: {}\n  - second: {model: paper}").empty());
    REQUIRE(complaints_after("plugins.yaml", "- paper: {}", "- paper: {}\n  - second: {model: ../paper}") ==
            Lines{"plugins.yaml:5:21: plugins[4].second.model: not a model's id: found `../paper`, expected lower-case "
                  "letters, digits, `-` and `_`"});
    REQUIRE(complaints_after("plugins.yaml", "- paper: {}", "- paper: {}\n  - second: {model: {a: 1}}").size() == 1);
}
