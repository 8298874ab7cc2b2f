// Quotes on styles of the library: the folders and trays priced as they are drawn, and what is doubtful about a style
// or a size said beside the price.
#include <fmt/format.h>

#include <algorithm>
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "tests/system/face.hpp"

using namespace flutebook::fixture;
using Catch::Matchers::Contains;
using Json = nlohmann::ordered_json;

namespace {

std::string styled_request(const std::string& style, const std::string& size) {
    return fmt::format(
        "request: R-1\ndate: 2026-10-15\nstyle: \"{}\"\n{}\nboard: B-140\nquantities: [1000, 5000]\nmargin: 0.2\n",
        style, size);
}

std::string inside(int length, int width, int height) {
    return fmt::format("inside: {{length: {}, width: {}, height: {}}}", length, width, height);
}

// A board of 3 mm, so that what its thickness takes is plain to see.
class StylePlant : public PlantCopy {
public:
    StylePlant() { replace("boards.yaml", "  B-140:  {plies: ", "  B-140:  {caliper: 3, plies: "); }

    Json quoted(const std::string& style, const std::string& size) {
        const Ended ended = ask(style, size, {"--json"});
        INFO(ended.errors);
        REQUIRE(ended.exit_code == 0);
        return Json::parse(ended.output)["requests"][0];
    }

    Ended ask(const std::string& style, const std::string& size, const std::vector<std::string>& options = {}) {
        std::vector<std::string> words = {"quote", write("r.yaml", styled_request(style, size))};
        words.insert(words.end(), options.begin(), options.end());
        return ask_at(folder(), words);
    }
};

std::vector<std::string> warnings_of(const Json& request) {
    std::vector<std::string> texts;
    for (const Json& warning : request["warnings"]) texts.push_back(warning["text"]);
    return texts;
}

std::size_t lines_with(const std::string& text, const std::string& part) {
    const auto lines = lines_of(text);
    return static_cast<std::size_t>(std::count_if(
        lines.begin(), lines.end(), [&](const std::string& line) { return line.find(part) != std::string::npos; }));
}

}  // namespace

TEST_CASE("a cross whose flaps all meet is quoted: its ends and flaps lie round its base") {
    StylePlant plant;
    const Json quote = plant.quoted("0404", inside(400, 300, 150))["quotes"][0];
    // Base 403 x 303; ends of 153 and flaps of half the base; sides of 156 and flaps of half of it.
    CHECK(quote["blank"]["length_mm"] == 403 + 2 * 153 + 2 * 201.5);
    CHECK(quote["blank"]["width_mm"] == 303 + 2 * 156 + 2 * 151.5);
    CHECK(quote["blank"]["area_m2"].get<double>() ==
          Approx((403 * 303 + 2 * (153 + 201.5) * 297 + 2 * (156 + 151.5) * 403) / 1e6).epsilon(1e-9));
    CHECK(quote["route"].size() == 1);
    CHECK(quote["price_per_thousand"].get<double>() > 0);
}

TEST_CASE("a folder whose lid tucks in is quoted: four panels and a flap in a row") {
    StylePlant plant;
    const Json quote = plant.quoted("0409", inside(400, 300, 150))["quotes"][0];
    CHECK(quote["blank"]["length_mm"] == 153 + 306 + 153 + 303 + 60);
    CHECK(quote["blank"]["width_mm"] == 406 + 2 * 153);
    CHECK(quote["route"].size() == 1);
    CHECK(quote["price_per_thousand"].get<double>() > 0);
}

TEST_CASE("a tray with a hinged lid is quoted: cut, then joined at its corners") {
    StylePlant plant;
    const Json quote = plant.quoted("0421", inside(400, 300, 150))["quotes"][0];
    CHECK(quote["blank"]["length_mm"] == 150 + 415 + 150);
    CHECK(quote["blank"]["width_mm"] == 50 + 303 + 153 + 306 + 150);
    CHECK(quote["route"].size() == 2);
    CHECK(std::any_of(quote["lines"].begin(), quote["lines"].end(), [](const Json& line) {
        return line["line"].get<std::string>().rfind("joint", 0) == 0 && line["amount"].get<double>() > 0;
    }));
}

TEST_CASE("a quote on a style from memory says so in one line, on another it says nothing") {
    StylePlant plant;
    for (const std::string style : {"0404", "0409", "0421", "0427"}) {
        INFO(style);
        const auto warnings = warnings_of(plant.quoted(style, inside(400, 300, 150)));
        REQUIRE(warnings.size() == 1);
        CHECK(warnings[0] == "style `" + style +
                                 "` was written from memory: compare it with your own drawing before it is used for a "
                                 "price");
        const Ended text = plant.ask(style, inside(400, 300, 150));
        CHECK(lines_with(text.output, "was written from memory") == 1);
    }
    CHECK(warnings_of(plant.quoted("0201", inside(400, 300, 150))).empty());
    CHECK(lines_with(plant.ask("0201", inside(400, 300, 150)).output, "from memory") == 0);
}

TEST_CASE("a box that is shorter than wide is priced both ways, as two requests would be") {
    StylePlant plant;
    const auto price = [](const Json& request) { return request["quotes"][0]["price_per_thousand"].get<double>(); };
    const Json asked = plant.quoted("0201", inside(300, 400, 250)), other = plant.quoted("0201", inside(400, 300, 250));
    REQUIRE(price(asked) != price(other));
    CHECK(warnings_of(other).empty());
    const auto warnings = warnings_of(asked);
    REQUIRE(warnings.size() == 1);
    CHECK(warnings[0] ==
          fmt::format("length is below width: found 300 mm x 400 mm, and length is the longer side at the "
                      "opening; a thousand at 1000 as asked: {}, the other way round: {}",
                      price(asked), price(other)));
    const std::string text = plant.ask("0201", inside(300, 400, 250)).output;
    CHECK_THAT(text, Contains(fmt::format("{}", price(asked))) && Contains(fmt::format("{}", price(other))));
}

TEST_CASE("a square box and a sheet that is shorter than wide have no other way round") {
    StylePlant plant;
    CHECK(warnings_of(plant.quoted("0201", inside(300, 300, 250))).empty());
    CHECK(warnings_of(plant.quoted("0110", "inside: {length: 600, width: 800}")).empty());
}

TEST_CASE("a box given by its outside costs what the box costs that is left within its walls") {
    StylePlant plant;
    const Json outside = plant.quoted("0201", "outside: {length: 406, width: 306, height: 262}");
    const Json inner = plant.quoted("0201", inside(400, 300, 250));
    CHECK(outside["quotes"][0]["blank"] == inner["quotes"][0]["blank"]);
    CHECK(outside["quotes"][0]["price_per_thousand"] == inner["quotes"][0]["price_per_thousand"]);
}
