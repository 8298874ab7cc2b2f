// What a price leaves out: found from outside, for any plugin, by moving each number that the request does not give.
#include <fmt/format.h>

#include <catch2/catch.hpp>
#include <filesystem>
#include <nlohmann/json.hpp>

#include "tests/system/face.hpp"
#include "tests/system/set_plant.hpp"

using namespace flutebook::fixture;
using Catch::Matchers::Contains;
using Json = nlohmann::ordered_json;
namespace fs = std::filesystem;

namespace {

constexpr const char* printed_box = "colours: 2\nroute: [FG1]\n";

std::string box(PlantCopy& plant, const std::string& more) {
    return plant.write("N-1.yaml", plain_request("N-1", "500, 5000") + more);
}

Json quotes_of(const PlantCopy& plant, const std::string& file) {
    const Ended ended = ask_at(plant.folder(), {"quote", file, "--json"});
    INFO(ended.errors);
    REQUIRE(ended.exit_code == 0);
    return Json::parse(ended.output)["requests"][0]["quotes"];
}

std::string text_of(const PlantCopy& plant, const std::string& file) {
    return ask_at(plant.folder(), {"quote", file}).output;
}

// "ink by coverage", in the order of the answer.
std::vector<std::string> missing_in(const Json& quote) {
    std::vector<std::string> result;
    for (const Json& item : quote.at("not_in_price"))
        result.push_back(item["line"].get<std::string>() +
                         (item["setting"].is_null() ? "" : " by " + item["setting"].get<std::string>()));
    return result;
}

bool is_missing(const Json& quote, const std::string& text) {
    const std::vector<std::string> all = missing_in(quote);
    return std::find(all.begin(), all.end(), text) != all.end();
}

// Lists the two plugins that a plant wrote for handles.
void take_handles(PlantCopy& plant) {
    fs::create_directory(fs::path(plant.folder()) / "plugins");
    fs::copy_file(FLUTEBOOK_HANDLES, fs::path(plant.folder()) / "plugins" / "handles.so");
    fs::copy_file(FLUTEBOOK_HOLES, fs::path(plant.folder()) / "plugins" / "holes.so");
    plant.replace("plugins.yaml", "  - paper: {}", "  - paper: {}\n  - handles: {}\n  - holes: {}");
}

}  // namespace

TEST_CASE("for a printed box without coverage the quote says once that its ink is not in the price") {
    PlantCopy plant;
    const std::string file = box(plant, printed_box);
    for (const Json& quote : quotes_of(plant, file)) {
        CHECK(is_missing(quote, "ink by coverage"));
        CHECK(is_missing(quote, "freight by distance"));
    }
    const std::string text = text_of(plant, file);
    CHECK_THAT(text, Contains("Not in this price") && Contains("ink: `coverage` not given; 2 colours are printed") &&
                         Contains("freight: `distance` not given"));
    CHECK(text.find("ink: ") == text.rfind("ink: "));
}

TEST_CASE("a given value counts as an answer, even 0 or the default") {
    PlantCopy plant;
    const Json given = quotes_of(
        plant, box(plant, std::string(printed_box) + "extras: {consumables: {coverage: 0}, delivery: {distance: 0}, "
                                                     "tooling: {plate_boxes: 0}}\n"));
    CHECK_FALSE(is_missing(given[0], "ink by coverage"));
    CHECK_FALSE(is_missing(given[0], "freight by distance"));
    CHECK_FALSE(is_missing(given[0], "plates by plate_boxes"));
    CHECK(is_missing(given[0], "plates"));  // still invoiced apart
}

TEST_CASE(
    "what would charge nothing all the same is not missing: a box without colours has no ink, a glued one no wire") {
    PlantCopy plant;
    const Json quotes = quotes_of(plant, box(plant, "extras: {delivery: {distance: 60}}\n"));
    CHECK(missing_in(quotes[0]) == std::vector<std::string>{});
    CHECK(text_of(plant, box(plant, "extras: {delivery: {distance: 60}}\n")).find("Not in this price") ==
          std::string::npos);
}

TEST_CASE("tools that are invoiced apart are shown with their amount, by the plate's price and the printed area") {
    PlantCopy plant;
    const std::string file = box(plant, printed_box);
    const Json quote = quotes_of(plant, file)[0];
    REQUIRE(is_missing(quote, "plates by plate_boxes"));
    for (const Json& item : quote["not_in_price"])
        if (item["line"] == "plates") {
            const double area_m2 =
                quote["blank"]["length_mm"].get<double>() * quote["blank"]["width_mm"].get<double>() / 1e6;
            CHECK(item["plugin"] == "tooling");
            CHECK(item["amount"].get<double>() == Approx(2 * area_m2 * 560).margin(0.0001));  // of plugins.yaml
        } else {
            CHECK(item["amount"].is_null());
        }
    CHECK_THAT(text_of(plant, file), Contains("EUR invoiced apart"));
    const Json cut = quotes_of(plant, demo_request("R-1004"));
    CHECK(cut[0].contains("not_in_price"));
}

TEST_CASE(
    "a plugin that the program knows nothing of is asked in the same way, and a move that it refuses stops nothing") {
    PlantCopy plant;
    take_handles(plant);
    const Json quotes = quotes_of(plant, box(plant, "extras: {delivery: {distance: 60}}\n"));
    CHECK(missing_in(quotes[0]) == std::vector<std::string>{"handle by to_a_box", "punching by handles.to_a_box"});
    const Json with = quotes_of(plant, box(plant, "extras: {delivery: {distance: 60}, handles: {to_a_box: 2}}\n"));
    CHECK(missing_in(with[0]) == std::vector<std::string>{});
    CHECK(with[0]["cost"].get<double>() - quotes[0]["cost"].get<double>() == Approx(500 * 2 * (0.05 + 2 * 0.01)));
}

TEST_CASE("the answer lists once what all pieces of a set lack, and for each piece what it alone lacks") {
    SetPlant plant;
    const Ended ended = plant.ask({"quote", plant.write_request("S-1", "500"), "--json"});
    const Json request = Json::parse(ended.output)["requests"][0];
    CHECK(is_missing(request["quotes"][0], "freight by distance"));
    for (const Json& piece : request["pieces"]) CHECK(is_missing(piece["quotes"][0], "freight by distance"));
    const std::string text = plant.ask({"quote", plant.write_request("S-1", "500")}).output;
    CHECK(text.find("freight: ") == text.rfind("freight: "));
}

TEST_CASE("a saved quote keeps what its price leaves out, and shows it as it was") {
    PlantCopy plant;
    const std::string file = box(plant, printed_box);
    REQUIRE(ask_at(plant.folder(), {"quote", file, "--save"}).exit_code == 0);
    const Ended shown = ask_at(plant.folder(), {"quote", "show", "Q000001"});
    CHECK_THAT(shown.output, Contains("ink: `coverage` not given; 2 colours are printed"));
    CHECK(ask_at(plant.folder(), {"quote", "recheck", "Q000001"}).exit_code == 0);
}

TEST_CASE("a table of many requests tells what several lack once, with their numbers") {
    PlantCopy plant;
    const std::string first = plant.write("A-1.yaml", plain_request("A-1", "500") + printed_box);
    const std::string second = plant.write("A-2.yaml", plain_request("A-2", "500") + printed_box);
    CHECK_THAT(ask_at(plant.folder(), {"quote", first, second}).output,
               Contains("Not in these prices") && Contains("A-1, A-2: ink: `coverage` not given"));
}

TEST_CASE("models that the plant calls optional are asked about where the request mentions them, and must be listed") {
    PlantCopy plant;
    plant.replace("plant.yaml", "units: metric", "pricing: {optional: [delivery]}\nunits: metric");
    CHECK_FALSE(is_missing(quotes_of(plant, box(plant, printed_box))[0], "freight by distance"));
    CHECK(is_missing(quotes_of(plant, box(plant, printed_box))[0], "ink by coverage"));
    CHECK(is_missing(quotes_of(plant, box(plant, std::string(printed_box) + "extras: {delivery: {}}\n"))[0],
                     "freight by distance"));
    plant.replace("plant.yaml", "optional: [delivery]", "optional: [delivary]");
    const Ended wrong = ask_at(plant.folder(), {"quote", box(plant, printed_box)});
    CHECK(wrong.exit_code == 3);
    CHECK_THAT(wrong.errors, Contains("plant.yaml:") && Contains("pricing.optional: unknown model: found `delivary`") &&
                                 Contains("did you mean `delivery`; "));
}
