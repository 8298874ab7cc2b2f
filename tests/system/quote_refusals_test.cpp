// Requests whose answer nobody could mean: files that are each fit, and a box, a price or an amount that is not.
#include <fmt/format.h>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "tests/system/face.hpp"

using namespace flutebook::fixture;
using Catch::Matchers::Contains;
using Catch::Matchers::StartsWith;
using Json = nlohmann::ordered_json;

namespace {

// What stands on standard error besides warnings of numbers that are seldom meant.
std::string complaints(const Ended& ended) {
    std::string result;
    for (const std::string& line : lines_of(ended.errors))
        if (line.rfind("warning: ", 0) != 0) result += line + "\n";
    return result;
}

// Nothing was answered, and one line says why.
void check_refused(const Ended& ended, const std::string& start, const std::string& more) {
    CHECK(ended.exit_code == 1);
    CHECK(ended.output.empty());
    CHECK(lines_of(complaints(ended)).size() == 1);
    CHECK_THAT(complaints(ended), StartsWith(start) && Contains(more));
}

std::string plain_margin(PlantCopy& plant, const std::string& margin) {
    std::string text = plain_request("R-1", "299, 301, 303");
    const std::size_t at = text.find("margin: ");
    return plant.write("r.yaml", text.replace(at, text.find('\n', at) - at, "margin: " + margin));
}

}  // namespace

TEST_CASE("slots that leave no flap of their panels are refused, not priced") {
    PlantCopy plant;
    plant.replace("flutes.yaml", "slot: 6}", "slot: 2 m}");
    const std::string file = plant.write("r.yaml", plain_request("R-1", "500"));
    check_refused(ask_at(plant.folder(), {"quote", file}),
                  file + ":4:9: inside: cell `f1`: no flap is left between two slots: ",
                  "found slots of 2000 mm in a width of 403 mm; ask for a larger box, or lower `slot` of flute `B` (");
    check_refused(ask_at(plant.folder(), {"quote", file}), file, "flutes.yaml:19:70)");
}

TEST_CASE("a box larger than its blank is refused, not priced") {
    PlantCopy plant;
    std::string text = plain_request("R-1", "500");
    const auto replace_line = [&](const std::string& key, const std::string& line) {
        const std::size_t at = text.find(key);
        REQUIRE(at != std::string::npos);
        text.replace(at, text.find('\n', at) - at, line);
    };
    replace_line("style:", "style: outline");
    replace_line("inside:", "outline: {length: 500, width: 400, area: 0.21}");
    const std::string file = plant.write("r.yaml", text);
    check_refused(ask_at(plant.folder(), {"quote", file}), file + ":", "area");
}

TEST_CASE("a price below zero is refused with the file and the request") {
    PlantCopy plant;
    plant.replace("plugins.yaml", "scrap_price: 85,", "scrap_price: 85000,");
    const std::string file = plant.write("r.yaml", plain_request("R-1", "500"));
    check_refused(ask_at(plant.folder(), {"quote", file}), file + ": request R-1 at 500: the price is below zero: ",
                  "; correct what the scrap brings, or the other prices of the plant's files");
}

TEST_CASE("a price below its cost is warned of, in the text and in JSON") {
    PlantCopy plant;
    plant.replace("plant.yaml", "currency: EUR", "currency: JPY");
    const std::string file = plain_margin(plant, "0");
    const Ended json = ask_at(plant.folder(), {"quote", file, "--json"});
    CHECK(json.exit_code == 0);
    const Json request = Json::parse(json.output)["requests"][0];
    std::size_t below = 0;
    for (const Json& quote : request["quotes"]) below += quote["price_per_thousand"] < quote["cost_per_thousand"];
    REQUIRE(below > 0);
    REQUIRE(request["warnings"].size() == below);
    const std::string text = request["warnings"][0]["text"];
    CHECK_THAT(text, Contains(" is below the cost: found ") && Contains("; raise the margin"));
    CHECK(request["warnings"][0]["at"] == file + ":7:9");
    CHECK_THAT(ask_at(plant.folder(), {"quote", file}).output, Contains("Watch") && Contains("is below the cost"));
}

TEST_CASE("a price that covers its cost is not warned of") {
    PlantCopy plant;
    const Ended json = ask_at(plant.folder(), {"quote", plain_margin(plant, "0.18"), "--json"});
    const Json document = Json::parse(json.output);
    CHECK(document["warnings"] == Json::array());
    CHECK(document["requests"][0]["warnings"] == Json::array());
}

TEST_CASE("an amount that is too large names the file and the request") {
    PlantCopy plant;
    plant.replace("machines.yaml", "fixed: 380", "fixed: 90000000000000");
    const std::string file = plant.write("r.yaml", plain_request("R-1", "500"));
    const Ended ended = ask_at(plant.folder(), {"quote", file});
    CHECK(ended.exit_code == 3);
    CHECK_THAT(complaints(ended), StartsWith(file + ": request R-1 at 500: ") && Contains("is no amount: "));
}

TEST_CASE("a price that is too large names the file and the request") {
    PlantCopy plant;
    plant.replace("machines.yaml", "fixed: 380", "fixed: 9000000000");
    const std::string file = plain_margin(plant, "0.99999999");
    check_refused(ask_at(plant.folder(), {"quote", file}), file + ": request R-1 at 299: the ",
                  " is too large to be kept: ");
}
