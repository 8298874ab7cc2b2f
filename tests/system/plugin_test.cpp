// `plugin list` and `plugin graph`: what the plant works with, and who feeds whom.
#include <algorithm>
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "tests/system/face.hpp"

using namespace flutebook::fixture;
using Catch::Matchers::Contains;
using Json = nlohmann::ordered_json;

namespace {

Json answer(const std::string& plant, const std::string& command) {
    const Ended ended = ask_at(plant, {"plugin", command, "--json"});
    CHECK(ended.exit_code == 0);
    CHECK(ended.errors.empty());
    return Json::parse(ended.output);
}

const Json& entry(const Json& list, const std::string& key, const std::string& value) {
    return *std::find_if(list.begin(), list.end(), [&](const Json& json) { return json[key] == value; });
}

}  // namespace

TEST_CASE("the list holds the models of plugins.yaml and no other, each with what it charges") {
    const Json list = answer(demo_plant(), "list")["plugins"];
    std::vector<std::string> ids;
    for (const Json& json : list) ids.push_back(json["id"]);
    std::sort(ids.begin(), ids.end());
    CHECK(ids == std::vector<std::string>{"consumables", "delivery", "energy", "paper", "run", "running", "scrap",
                                          "setup", "starch", "tooling"});
    const Json& scrap = entry(list, "id", "scrap");
    CHECK(scrap["version"].get<std::string>().size() >= 5);
    CHECK(entry(scrap["charges"], "line", "scrap.credit")["class"] == "recovery");
    CHECK(entry(scrap["settings"], "name", "scrap_price")["default"].is_null());
    CHECK(entry(list, "id", "run")["sheds"].size() == 8);
    const std::string file = entry(list, "id", "run")["file"];
    CHECK(file.substr(file.size() - 6) == "run.so");
}

TEST_CASE("the printed list tells of every model, inside the page") {
    const Ended ended = ask_at(demo_plant(), {"plugin", "list"});
    CHECK(ended.exit_code == 0);
    CHECK_THAT(ended.output, Contains("energy 1.0.0") && Contains("charges") && Contains("energy.heat [kWh, step]"));
    for (const std::string& line : lines_of(ended.output))
        if (line.find(".so") == std::string::npos) CHECK(line.size() <= 100);  // a path is not broken
}

TEST_CASE(
    "a file in the plugins folder that plugins.yaml does not list is told with the command that prints its entry") {
    const PlantCopy plant;
    plant.lay_house_rule();
    const std::string file = plant.folder() + "/plugins/houserule.so";
    CHECK(answer(plant.folder(), "list")["not_listed"] == Json::array({file}));
    CHECK_THAT(ask_at(plant.folder(), {"plugin", "list"}).output, Contains("plugin describe " + file + " --yaml"));
}

TEST_CASE("a plugins folder whose files are all listed leaves nothing to tell") {
    PlantCopy plant;
    plant.take_house_rule();
    CHECK(answer(plant.folder(), "list")["not_listed"] == Json::array());
    CHECK_THAT(ask_at(plant.folder(), {"plugin", "list"}).output, !Contains("Not loaded"));
}

TEST_CASE("in the graph every number comes from a fact or from a model before the one that takes it") {
    const Json models = answer(demo_plant(), "graph")["models"];
    std::vector<std::string> before;
    std::size_t links = 0;
    for (const Json& model : models) {
        for (const Json& need : model["needs"]) {
            const Json& from = need["from"];
            ++links;
            if (from["kind"] == "fact") {
                CHECK(from["model"].is_null());
                continue;
            }
            CHECK(std::count(before.begin(), before.end(), from["model"].get<std::string>()) == 1);
            const Json& giver = entry(models, "id", from["model"]);
            const Json& given = entry(giver["provides"], "name", from["name"]);
            CHECK(given["unit"] == from["unit"]);
            CHECK(std::count(given["to"].begin(), given["to"].end(), model["id"]) == 1);
        }
        before.push_back(model["id"]);
    }
    CHECK(links > 40);
}

TEST_CASE("the printed graph names who gives and who takes") {
    const Ended ended = ask_at(demo_plant(), {"plugin", "graph"});
    CHECK(ended.exit_code == 0);
    CHECK_THAT(ended.output, Contains("gives paper.issued [kg, ply] to paper, host") &&
                                 Contains("from run: paper.issued [kg, ply]") && !Contains("Replaced"));
    for (const std::string& line : lines_of(ended.output)) CHECK(line.size() <= 100);
}

TEST_CASE("what a plant lets another model say is shown as replaced") {
    PlantCopy plant;
    plant.take_house_rule();
    const Json graph = answer(plant.folder(), "graph");
    REQUIRE(graph["replaced"].size() == 1);
    CHECK(graph["replaced"][0]["name"] == "step.run_waste");
    CHECK(graph["replaced"][0]["by"] == "houserule");
    const Json& run = entry(graph["models"], "id", "run");
    CHECK(entry(run["needs"], "name", "step.run_waste")["from"]["model"] == "houserule");
    const Json& rule = entry(graph["models"], "id", "houserule");
    CHECK(entry(rule["needs"], "name", "step.run_waste")["from"]["kind"] == "fact");
    CHECK_THAT(ask_at(plant.folder(), {"plugin", "graph"}).output,
               Contains("Replaced, as the plant prefers") && Contains("step.run_waste is taken from houserule"));
    CHECK_THAT(ask_at(plant.folder(), {"plugin", "list"}).output, Contains("houserule 2.1.0"));
}
