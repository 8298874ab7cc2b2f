// `plugin graph --dot` and `--svg`: the drawing shows what the graph is.
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "tests/system/face.hpp"

using namespace flutebook::fixture;
using Catch::Matchers::Contains;
using Catch::Matchers::EndsWith;
using Catch::Matchers::StartsWith;
using Json = nlohmann::json;

namespace {

// The line of the arrow between two models; empty where there is none.
std::string arrow(const std::string& drawing, const std::string& from, const std::string& to) {
    for (const std::string& line : lines_of(drawing))
        if (line.find("\"" + from + "\" -> \"" + to + "\"") != std::string::npos) return line;
    return "";
}

Ended drawn(const std::vector<std::pair<std::string, std::string>>& variables) {
    return run({{FLUTEBOOK_PROGRAM, "--plant", demo_plant(), "plugin", "graph", "--svg"}, "", variables});
}

}  // namespace

TEST_CASE("every number that one model takes from another is named on an arrow, with its unit") {
    const Json models = Json::parse(ask_at(demo_plant(), {"plugin", "graph", "--json"}).output)["models"];
    const std::string drawing = ask_at(demo_plant(), {"plugin", "graph", "--dot"}).output;
    std::size_t arrows = 0;
    for (const Json& model : models)
        for (const Json& need : model["needs"]) {
            const Json& from = need["from"];
            const std::string named = from["name"].get<std::string>() + " [" + from["unit"].get<std::string>() + "]\\l";
            if (from["kind"] == "model") {
                ++arrows;
                CHECK_THAT(arrow(drawing, from["model"], model["id"]), Contains(named));
            } else {
                CHECK_THAT(drawing, Contains(named));
            }
        }
    CHECK(arrows > 8);
    CHECK_THAT(arrow(drawing, "run", "host"), Contains("run.good [1]"));
}

TEST_CASE("a number that the plant prefers in place of another comes on a dashed arrow") {
    PlantCopy plant;
    plant.take_house_rule();
    const std::string drawing = ask_at(plant.folder(), {"plugin", "graph", "--dot"}).output;
    CHECK_THAT(arrow(drawing, "houserule", "run"), Contains("step.run_waste [1]") && Contains("style=dashed"));
    CHECK(arrow(drawing, "run", "scrap").find("dashed") == std::string::npos);
}

TEST_CASE("Graphviz draws the graph where it is installed") {
    const Ended ended = drawn({});
    CHECK(ended.errors == "");
    CHECK(ended.exit_code == 0);
    CHECK_THAT(ended.output, StartsWith("<?xml") && EndsWith("</svg>\n"));
    for (const char* id : {"run", "energy", "tooling"}) CHECK_THAT(ended.output, Contains(std::string(". ") + id));
}

TEST_CASE("where Graphviz is not installed the drawing is refused, with what to do") {
    const Ended ended = drawn({{"PATH", "/nowhere"}});
    CHECK(ended.exit_code == 1);
    CHECK(ended.output.empty());
    CHECK(ended.errors ==
          "plugin graph: cannot be drawn: there is no program `dot`; install graphviz, or draw what --dot answers "
          "elsewhere\n");
}

TEST_CASE("a graph is answered in one form") {
    CHECK(ask_at(demo_plant(), {"plugin", "graph", "--dot", "--svg"}).exit_code == 2);
    CHECK(ask_at(demo_plant(), {"plugin", "graph", "--dot", "--json"}).exit_code == 2);
}
