// The small plant's files. Lines matter: tests name them.
#include "tests/unit/plant/plant_folder.hpp"

#include <unistd.h>

#include <atomic>
#include <catch2/catch.hpp>
#include <fstream>
#include <sstream>

#include "host/base/errors.hpp"

namespace flutebook::fixture {

namespace {

constexpr const char* plant_yaml = R"(plant: Small Board
currency: EUR
units: metric
shifts: [early, late]
balance_tolerance: 0.005
mills:
  Northweir: {moisture: 0.10, deduction: dry-matter}
)";

constexpr const char* papers_yaml = R"(papers:
  KL135: {use: liner, grammage: 135, moisture: 0.08, roll_widths: [1850, 2250],
          price: [{from: 2026-01-01, per_tonne: 640}, {from: 2026-09-01, per_tonne: 668}]}
  SC127: {use: medium, grammage: 127, moisture: 0.08, roll_widths: [1850, 2250],
          price: [{from: 2026-01-01, per_tonne: 510}]}
  TL125: {use: liner, grammage: 125, moisture: 0.09, roll_widths: [1850, 2250],
          price: [{from: 2026-01-01, per_tonne: 540}]}
)";

constexpr const char* flutes_yaml = R"(flutes:
  B: {take_up: 1.32, height: 2.5, adhesive: {single_facer: 4.5, double_backer: 5.5}}
  C: {take_up: 1.43, height: 3.6, adhesive: {single_facer: 5.0, double_backer: 6.0}}
allowances:
  B:   {panel: 3, depth: 6, flap: 1.5, joint: 2, tab: 30, slot: 6}
  B+C: {panel: 7, depth: 14, flap: 3.5, joint: 3, tab: 35, slot: 9}
)";

constexpr const char* boards_yaml = R"(boards:
  B-140: {plies: [KL135, {flute: B, paper: SC127}, TL125]}
  BC-200: {plies: [KL135, {flute: B, paper: SC127}, TL125, {flute: C, paper: SC127}, KL135]}
  C-140: {plies: [KL135, {flute: C, paper: SC127}, TL125]}
)";

constexpr const char* machines_yaml = R"(corrugators:
  C1: {roll_width: [1400, 2500], trim_min: 30, outs_max: 6, slit: [150, 2420], chop: [450, 4500],
       speed: {single: 220, double: 160}, order_change: {minutes: 1.5, metres: 25}, run_waste: 0.018,
       roll_loss: 0.012, hourly: {labour: 240, fixed: 380}, power: 420}
converters:
  FG1: {kind: folder-gluer, sheet: {length: [300, 2400], width: [250, 1150]}, colours: 3,
        setup: {minutes: 25, sheets: 40}, run_waste: 0.012, speed: 9000, hourly: {labour: 95, fixed: 120}, power: 75}
  DC1: {kind: die-cutter, sheet: {length: [500, 2000], width: [400, 1600]}, colours: 2, between: 8, edge: 12,
        ups_max: 12, setup: {minutes: 40, sheets: 60}, run_waste: 0.02, speed: 6000,
        hourly: {labour: 90, fixed: 150}, power: 90}
dispatch: {minutes: 10, hourly: {labour: 30, fixed: 5}}
)";

constexpr const char* plugins_yaml = R"(plugins:
  - run: {}
  - scrap: {scrap_price: 85, handling: 18}
  - paper: {}
prefer: {step.run_waste: paper}
isolation: {scrap: process}
sha256: {run: 0123456789abcdef0123456789abcdef0123456789abcdef0123456789ABCDEF}
)";

constexpr const char* request_yaml = R"(request: R-1001
customer: Ashlar Tiles
date: 2026-10-15
style: "0201"
inside: {length: 400, width: 300, height: 250}
board: B-140
quantities: [500, 1000, 5000]
margin: 0.18
colours: 2
route: [FG1]
extras: {scrap: {note: 2}}
)";

std::filesystem::path new_folder() {
    static std::atomic<int> count{0};
    auto folder = std::filesystem::temp_directory_path() /
                  ("flutebook-catalogue-" + std::to_string(::getpid()) + "-" + std::to_string(++count));
    std::filesystem::create_directories(folder);
    return folder;
}

std::string text_of(const std::filesystem::path& file) {
    std::ostringstream text;
    text << std::ifstream(file, std::ios::binary).rdbuf();
    return text.str();
}

}  // namespace

PlantFolder::PlantFolder() : folder_(new_folder()) {
    write("plant.yaml", plant_yaml);
    write("papers.yaml", papers_yaml);
    write("flutes.yaml", flutes_yaml);
    write("boards.yaml", boards_yaml);
    write("machines.yaml", machines_yaml);
    write("plugins.yaml", plugins_yaml);
    write("r.yaml", request_yaml);
}

PlantFolder::~PlantFolder() {
    std::error_code ignored;
    std::filesystem::remove_all(folder_, ignored);
}

void PlantFolder::write(const std::string& file, const std::string& text) const {
    std::ofstream(folder_ / file, std::ios::binary) << text;
}

void PlantFolder::change(const std::string& file, const std::string& old_text, const std::string& new_text) const {
    auto text = text_of(folder_ / file);
    const auto at = text.find(old_text);
    CAPTURE(file, old_text);
    REQUIRE(at != std::string::npos);
    REQUIRE(text.find(old_text, at + 1) == std::string::npos);
    write(file, text.replace(at, old_text.size(), new_text));
}

Lines PlantFolder::complaints() const {
    try {
        static_cast<void>(read());
    } catch (const InputError& error) {
        REQUIRE(error.whose() == InputError::Whose::plant);
        return named_from_within(error.lines());
    }
    return {};
}

Lines PlantFolder::request_complaints() const {
    const auto plant = read();
    try {
        static_cast<void>(orders::read_request(plant, path("r.yaml")));
    } catch (const InputError& error) {
        REQUIRE(error.whose() == InputError::Whose::request);
        return named_from_within(error.lines());
    }
    return {};
}

Lines PlantFolder::named_from_within(const Lines& lines) const {
    Lines result;
    const auto before = path() + "/";
    for (const auto& line : lines) result.push_back(line.starts_with(before) ? line.substr(before.size()) : line);
    return result;
}

Lines complaints_after(const std::string& file, const std::string& old_text, const std::string& new_text) {
    const PlantFolder folder;
    folder.change(file, old_text, new_text);
    return folder.complaints();
}

Lines request_complaints_after(const std::string& old_text, const std::string& new_text) {
    const PlantFolder folder;
    folder.change("r.yaml", old_text, new_text);
    return folder.request_complaints();
}

}  // namespace flutebook::fixture
