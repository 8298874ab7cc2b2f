// `style list`, `style show` and `style check` on the demo plant, and on a copy with styles of its own.
#include <boost/property_tree/ptree.hpp>
#include <boost/property_tree/xml_parser.hpp>
#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>

#include "tests/system/face.hpp"

using namespace flutebook::fixture;
using Catch::Matchers::Contains;
using nlohmann::json;

namespace {

using Words = std::vector<std::string>;

Words show(const std::string& code, const std::string& inside, const Words& more = {}) {
    Words words = {"style", "show", code, "--inside", inside, "--board", "B-140"};
    words.insert(words.end(), more.begin(), more.end());
    return words;
}

std::string text_of(const std::string& file) {
    std::ostringstream text;
    text << std::ifstream(file, std::ios::binary).rdbuf();
    return text.str();
}

// Flaps that are folded in one step and are too deep to meet: they land on one another.
constexpr const char* clashing_style = R"(# A style that does not fold.
styles:
  clash:
    like: "0201"
    title: Slotted box, outer flaps too deep
    across: [B/2 + flap + 20, H + depth, B/2 + flap + 20]
)";

}  // namespace

TEST_CASE("the styles of a plant are listed with what makes each and where its construction comes from") {
    const Ended text = ask_at(demo_plant(), {"style", "list"});
    CHECK(text.exit_code == 0);
    CHECK_THAT(text.output, Contains("0201") && Contains("folder-gluer") && Contains("from memory"));
    const auto styles = json::parse(ask_at(demo_plant(), {"style", "list", "--json"}).output)["styles"];
    CHECK(styles.size() >= 20);
    for (const auto& style : styles) {
        INFO(style.dump());
        CHECK_FALSE(style["title"].get<std::string>().empty());
        CHECK_THAT(text.output, Contains(style["code"].get<std::string>()));
    }
}

TEST_CASE("a style that is shown has the blank that its quote has") {
    const auto shown = json::parse(ask_at(demo_plant(), show("0201", "400x300x250", {"--json"})).output);
    const auto quoted = json::parse(quote_demo({demo_request("R-1001")}, {"--json"}).output);
    const auto& blank = quoted["requests"][0]["quotes"][0]["blank"];
    REQUIRE(shown["pieces"].size() == 1);
    const auto& piece = shown["pieces"][0];
    CHECK(piece["piece"].is_null());
    CHECK(piece["length_mm"] == blank["length_mm"]);
    CHECK(piece["width_mm"] == blank["width_mm"]);
    CHECK(piece["area_m2"] == blank["area_m2"]);
    CHECK(piece["scores"]["along_mm"] == json{30, 433, 736, 1139});
    CHECK(piece["scores"]["across_mm"] == json{151.5, 407.5});
    CHECK(piece["joint_mm"] == 256);
    CHECK(piece["made_by"] == json{"folder-gluer"});
}

TEST_CASE("the drawings of a style are written as one well-formed SVG file, the same each time, and not over another") {
    const PlantCopy plant;
    const std::string file = plant.folder() + "/box.svg";
    for (const std::string code : {"0110", "0201", "0427"}) {
        INFO(code);
        const Ended ended = ask_at(plant.folder(), show(code, "400x300x150", {"--svg", file, "--replace"}));
        REQUIRE(ended.exit_code == 0);
        CHECK_THAT(ended.output, Contains("net area"));
        const std::string first = text_of(file);
        std::istringstream stream(first);
        boost::property_tree::ptree tree;
        CHECK_NOTHROW(boost::property_tree::read_xml(stream, tree));
        CHECK_THAT(first, Contains("Blank, flat"));
        CHECK((first.find("Box, half open") != std::string::npos) == (code != "0110"));
        REQUIRE(ask_at(plant.folder(), show(code, "400x300x150", {"--svg", file, "--replace"})).exit_code == 0);
        CHECK(text_of(file) == first);
    }
    CHECK(ask_at(plant.folder(), show("0201", "400x300x250", {"--svg", file})).exit_code == 1);
}

TEST_CASE("an unknown style is answered by the list of styles, an unknown board by that of boards") {
    const Ended style = ask_at(demo_plant(), show("0210", "400x300x250"));
    CHECK(style.exit_code == 1);
    CHECK_THAT(style.errors, Contains("`0210`") && Contains("0201") && Contains("0427"));
    const Ended board = ask_at(demo_plant(), {"style", "show", "0201", "--inside", "400x300x250", "--board", "X"});
    CHECK(board.exit_code == 1);
    CHECK_THAT(board.errors, Contains("`X`") && Contains("B-140"));
}

TEST_CASE("measures change what they name, and one that a style does not ask for is refused") {
    const auto width = [](const Words& more) {
        Words words = show("0202", "400x300x250", more);
        words.push_back("--json");
        return json::parse(ask_at(demo_plant(), words).output)["pieces"][0]["width_mm"].get<double>();
    };
    CHECK(width({"--measure", "overlap=60"}) == Approx(width({"--measure", "overlap=40"}) + 20));
    const Ended unknown = ask_at(demo_plant(), show("0201", "400x300x250", {"--measure", "overlap=60"}));
    CHECK(unknown.exit_code == 1);
    CHECK_THAT(unknown.errors, Contains("`overlap`"));
    const Ended outside = ask_at(demo_plant(), show("0202", "400x300x250", {"--measure", "overlap=900"}));
    CHECK(outside.exit_code == 1);
    CHECK_THAT(outside.errors, Contains("overlap"));
}

TEST_CASE("a size, a measure or a file name that makes no sense is wrong usage") {
    CHECK(ask_at(demo_plant(), show("0201", "400x300")).exit_code == 1);
    CHECK(ask_at(demo_plant(), show("0201", "400")).exit_code == 2);
    CHECK(ask_at(demo_plant(), show("0201", "400x300x250", {"--measure", "overlap"})).exit_code == 2);
    CHECK(ask_at(demo_plant(), show("0201", "400x300x250", {"--svg", "box.png"})).exit_code == 2);
    CHECK(ask_at(demo_plant(), {"style", "show", "0201"}).exit_code == 2);
    CHECK(ask_at(demo_plant(), {"style"}).exit_code == 2);
}

TEST_CASE("the check says `folds` of a style that does, and ends with 1 for one that does not") {
    const Ended right = ask_at(demo_plant(), {"style", "check", "0201"});
    CHECK(right.exit_code == 0);
    CHECK_THAT(right.output, Contains("folds") && !Contains("does not"));
    PlantCopy plant;
    plant.write("styles.yaml", clashing_style);
    const Ended wrong = ask_at(plant.folder(), {"style", "check", "clash"});
    CHECK(wrong.exit_code == 1);
    CHECK_THAT(wrong.output, Contains("clash") && Contains("does not fold") && Contains("f1") && Contains("mm"));
    CHECK(json::parse(ask_at(plant.folder(), {"style", "check", "clash", "--json"}).output)["folds"] == false);
    CHECK(ask_at(demo_plant(), {"style", "check", "0210"}).exit_code == 1);
}
