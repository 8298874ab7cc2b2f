// A saved quote worked out again by the real program, after this or that of the plant was changed.
#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>

#include "tests/system/face.hpp"

using namespace flutebook::fixture;
using Catch::Matchers::Contains;
using Json = nlohmann::ordered_json;
namespace fs = std::filesystem;

namespace {

void save(const PlantCopy& plant, const std::vector<std::string>& options = {}) {
    std::vector<std::string> words = {"quote", demo_request("R-1001"), "--save"};
    words.insert(words.end(), options.begin(), options.end());
    REQUIRE(ask_at(plant.folder(), words).exit_code == 0);
}

Ended recheck(const PlantCopy& plant, const std::vector<std::string>& options = {}) {
    std::vector<std::string> words = {"quote", "recheck", "Q000001"};
    words.insert(words.end(), options.begin(), options.end());
    return ask_at(plant.folder(), words);
}

Json recheck_json(const PlantCopy& plant) {
    return Json::parse(recheck(plant, {"--json"}).output);
}

// A saved quote of the demo plant.
class PlantWithQuote : public PlantCopy {
public:
    PlantWithQuote() { save(*this); }
};

// One whose run waste is said by a plugin of its own.
class HouseRulePlant : public PlantCopy {
public:
    HouseRulePlant() {
        take_house_rule();
        save(*this);
    }
    void take_next_version() const {
        fs::copy_file(FLUTEBOOK_NEXT_HOUSERULE, own_plugin(), fs::copy_options::overwrite_existing);
    }
    [[nodiscard]] std::string own_plugin() const { return folder() + "/plugins/houserule.so"; }
};

long ten_thousandths(const Json& amount) {
    return std::lround(amount.get<double>() * 10000);
}

std::vector<std::string> figure_keys(const Json& figures) {
    std::vector<std::string> result;
    for (const Json& figure : figures) result.push_back(figure["key"]);
    return result;
}

void raise_paper_price(PlantCopy& plant) {
    plant.replace("papers.yaml", "{from: 2026-09-01, per_tonne: 668}", "{from: 2026-09-01, per_tonne: 700}");
}

}  // namespace

TEST_CASE("a quote that nothing was changed of comes out again, byte for byte") {
    const PlantWithQuote plant;
    const Ended ended = recheck(plant);
    CHECK(ended.exit_code == 0);
    CHECK(ended.errors.empty());
    CHECK_THAT(ended.output, Contains("Nothing differs") && Contains("byte for byte"));
    const Json json = recheck_json(plant);
    CHECK(json["differs"] == false);
    CHECK(json["saved_files"]["ends"] == "to-the-byte");
    CHECK(json["plant_files"].empty());
    CHECK(json["plugins"].empty());
}

TEST_CASE("a quote that was saved with a line explained comes out again, byte for byte") {
    const PlantCopy plant;
    save(plant, {"--explain", "starch"});
    CHECK(recheck(plant).exit_code == 0);
    CHECK(recheck_json(plant)["saved_files"]["ends"] == "to-the-byte");
}

TEST_CASE("a quote at prices of another day is rechecked at the prices of that day") {
    PlantCopy plant;
    save(plant, {"--date", "2026-02-01"});
    CHECK(recheck(plant).exit_code == 0);
    raise_paper_price(plant);
    const Json json = recheck_json(plant);
    CHECK(json["date"] == "2026-02-01");
    CHECK(json["differs"] == false);
    CHECK(json["plant_files"].size() == 1);
}

TEST_CASE(
    "a paper's price that was changed is told by key and place, with the paper's lines, the totals, and no more") {
    PlantWithQuote plant;
    raise_paper_price(plant);
    const Ended ended = recheck(plant);
    CHECK(ended.exit_code == 1);
    CHECK_THAT(ended.output, Contains("Different today, by the plant's files.") &&
                                 Contains("papers.yaml:11:49: papers.KL135.price[2026-09-01].per_tonne: 668 -> 700"));
    const Json json = recheck_json(plant);
    CHECK(json["cause"] == "plant-files");
    CHECK(json["saved_files"]["ends"] == "to-the-byte");
    REQUIRE(json["plant_files"].size() == 1);
    CHECK(json["plant_files"][0]["place"] == plant.folder() + "/papers.yaml:11:49");
    REQUIRE(json["quantities"].size() == 3);
    for (const Json& item : json["quantities"]) {
        REQUIRE(item["lines"].size() == 1);
        CHECK(item["lines"][0]["plugin"] == "paper");
        CHECK(item["lines"][0]["ply"] == 0);
        CHECK(ten_thousandths(item["lines"][0]["by"]) ==
              ten_thousandths(item["now"]["cost"]) - ten_thousandths(item["was"]["cost"]));
        const auto keys = figure_keys(item["figures"]);
        CHECK(std::vector<std::string>(keys.begin(), keys.begin() + 3) ==
              std::vector<std::string>{"cost", "cost_per_thousand", "price_per_thousand"});
        for (const std::string& key : keys)
            CHECK((key.rfind("mass_kg", 0) != 0 && key != "corrugator" && key != "roll_width_mm" && key != "recovery"));
    }
}

TEST_CASE("another file of a plugin that works out the same is named, and nothing that was answered differs") {
    const PlantWithQuote plant;
    fs::create_directory(plant.folder() + "/plugins");
    fs::copy_file(FLUTEBOOK_PLUGIN_DIR "/paper.so", plant.folder() + "/plugins/paper.so");
    std::ofstream(plant.folder() + "/plugins/paper.so", std::ios::app) << "a byte more";
    const Ended ended = recheck(plant);
    CHECK(ended.exit_code == 0);
    CHECK_THAT(ended.output, Contains("Changed plugins\n  paper 1.0.0, another file: "));
    const Json json = recheck_json(plant);
    REQUIRE(json["plugins"].size() == 1);
    CHECK(json["plugins"][0]["id"] == "paper");
    CHECK(json["saved_files"]["ends"] == "to-the-byte");
}

TEST_CASE("a plugin's next version that works out otherwise is named as the cause") {
    const HouseRulePlant plant;
    plant.take_next_version();
    const Ended ended = recheck(plant);
    CHECK(ended.exit_code == 1);
    CHECK_THAT(ended.output, Contains("by the plugins or the program.") && Contains("houserule 2.1.0 -> 2.2.0"));
    const Json json = recheck_json(plant);
    CHECK(json["cause"] == "plugins");
    CHECK(json["saved_files"]["ends"] == "otherwise");
    for (const Json& item : json["quantities"]) CHECK(item["saved_files"] == item["now"]);
}

TEST_CASE("differences by plugins and by the plant's files are shown separately, and add up") {
    HouseRulePlant plant;
    plant.take_next_version();
    raise_paper_price(plant);
    const Ended ended = recheck(plant);
    CHECK_THAT(ended.output, Contains("by the plant's files and by the plugins or the program.") &&
                                 Contains("cost by the plugins or the program +"));
    const Json json = recheck_json(plant);
    CHECK(json["cause"] == "both");
    for (const Json& item : json["quantities"]) {
        CHECK(item["was"]["cost"] < item["saved_files"]["cost"]);
        CHECK(item["saved_files"]["cost"] < item["now"]["cost"]);
        long by_lines = 0;
        for (const Json& line : item["lines"]) by_lines += ten_thousandths(line["by"]);
        CHECK(by_lines == ten_thousandths(item["now"]["cost"]) - ten_thousandths(item["was"]["cost"]));
    }
}

TEST_CASE("if an allowance makes another way the cheapest, recheck shows the old and the new way") {
    PlantWithQuote plant;
    plant.replace("machines.yaml", "metres: 25}, run_waste: 0.018", "metres: 250}, run_waste: 0.018");
    const Ended ended = recheck(plant);
    CHECK(ended.exit_code == 1);
    CHECK_THAT(ended.output, Contains("corrugators.C1.order_change.metres: 25 -> 250"));
    const Json json = recheck_json(plant);
    const Json& way = json["quantities"][0]["figures"][0];
    CHECK(way["key"] == "roll_width_mm");
    CHECK(way["was"] == "2450");
    CHECK(way["now"] == "1850");
    CHECK(way["by"] == -600);
}

TEST_CASE("if a board was removed, recheck says so, and why the request is refused today") {
    PlantWithQuote plant;
    plant.replace("boards.yaml", "  B-140:", "  B-141:");
    const Ended ended = recheck(plant);
    CHECK(ended.exit_code == 1);
    CHECK_THAT(ended.output, Contains("boards.B-140.plies[1]: taken out, was KL135") &&
                                 Contains("Today nothing can be answered") && Contains("unknown board"));
    CHECK_THAT(ended.errors, Contains("quote Q000001 as it was saved: ") && Contains("R-1001-everyday-box.yaml:10:8"));
    CHECK(recheck_json(plant)["today"]["ends"] == "refused");
}

TEST_CASE("a quantity that can no longer be made is reported with the limits that prevent it") {
    PlantWithQuote plant;
    plant.replace("machines.yaml", "sheet: {length: [300, 2400], width: [250, 1150]}, colours: 3",
                  "sheet: {length: [300, 1000], width: [250, 1150]}, colours: 3");
    const Ended ended = recheck(plant);
    CHECK(ended.exit_code == 1);
    CHECK_THAT(ended.output, Contains("798.46 a thousand then; today it cannot be made"));
    const Json json = recheck_json(plant);
    CHECK(json["quantities"][0]["now"].is_null());
    CHECK_FALSE(json["quantities"][0]["limits"].empty());
}

TEST_CASE("if saved files no longer fit the plugins, recheck shows the plugin's message and all other differences") {
    HouseRulePlant plant;
    fs::remove(plant.own_plugin());
    plant.replace("plugins.yaml", "prefer: {step.run_waste: houserule}\n", "");
    plant.replace("plugins.yaml", "  - houserule: {}\n", "");
    const Ended ended = recheck(plant);
    CHECK(ended.exit_code == 3);
    CHECK_THAT(ended.output, Contains("The saved files no longer fit today's plugins:") &&
                                 Contains("houserule 2.1.0") && Contains("is loaded no more") &&
                                 Contains("Price per thousand"));
    CHECK_THAT(ended.errors, Contains("houserule.so"));
    const Json json = recheck_json(plant);
    CHECK(json["saved_files"]["ends"] == "unfit");
    CHECK(json["cause"] == "unknown");
}

TEST_CASE("a recheck says the same on any number of threads") {
    PlantWithQuote plant;
    raise_paper_price(plant);
    CHECK(recheck(plant, {"--threads", "1"}).output == recheck(plant, {"--threads", "7"}).output);
}

TEST_CASE("a recheck leaves the ledger as it is, and writes none where there is none") {
    PlantWithQuote plant;
    const std::string then = ask_at(plant.folder(), {"verify"}).output;
    raise_paper_price(plant);
    CHECK(recheck(plant).exit_code == 1);
    CHECK(ask_at(plant.folder(), {"verify"}).output == then);
    const PlantCopy empty;
    CHECK(recheck(empty).exit_code == 1);
    CHECK_FALSE(fs::exists(empty.folder() + "/ledger.db"));
}

TEST_CASE("a quote that was never saved is refused by its number") {
    const PlantWithQuote plant;
    const Ended ended = ask_at(plant.folder(), {"quote", "recheck", "Q000002"});
    CHECK(ended.exit_code == 1);
    CHECK_THAT(ended.errors, Contains("no such quote: found 'Q000002'"));
}
