// Whatever is wrong with a request, and whatever is wrong with a plant, is told in one go.
#include <catch2/catch.hpp>
#include <string>
#include <vector>

#include "tests/system/face.hpp"

using namespace flutebook::fixture;
using Catch::Matchers::Contains;
using Catch::Matchers::StartsWith;

namespace {

// The lines on standard error, which are all of them errors.
std::vector<std::string> refusals(const PlantCopy& plant, const std::vector<std::string>& words, int exit_code) {
    const Ended ended = ask_at(plant.folder(), words);
    CAPTURE(ended.errors);
    CHECK(ended.exit_code == exit_code);
    return lines_of(ended.errors);
}

std::string request_of(const std::string& quantities, const std::string& extras) {
    return plain_request("R-1", quantities) + "extras: " + extras + "\n";
}

}  // namespace

TEST_CASE("errors in a request's extras are reported with its other errors, in the order of their places") {
    PlantCopy plant;
    const std::string file = plant.write("r.yaml", "extras: {consumables: {coverage: 7}, delivery: {distanse: 60}}\n" +
                                                       plain_request("R-1", "0, 500") + "colours: many\n");
    const auto lines = refusals(plant, {"quote", file}, 1);
    REQUIRE(lines.size() == 4);
    CHECK_THAT(lines[0], StartsWith(file + ":1:34: extras.consumables.coverage: out of range: found 7"));
    CHECK_THAT(lines[1], StartsWith(file + ":1:49: extras.delivery.distanse: ") && Contains("'distance'"));
    CHECK_THAT(lines[2], StartsWith(file + ":7:14: quantities[1]: out of range"));
    CHECK_THAT(lines[3], StartsWith(file + ":9:10: colours: not a number"));
}

TEST_CASE("a model of extras that is not loaded is reported once, with the other errors") {
    PlantCopy plant;
    const std::string file = plant.write("r.yaml", request_of("0", "{ink: {coverage: 7}}"));
    const auto lines = refusals(plant, {"quote", file}, 1);
    REQUIRE(lines.size() == 2);
    CHECK_THAT(lines[1], StartsWith(file + ":8:10: extras.ink: unknown model"));
}

TEST_CASE("a box that cannot be made and extras out of range are reported together") {
    PlantCopy plant;
    plant.replace("flutes.yaml", "slot: 6}", "slot: 2 m}");
    const std::string file = plant.write("r.yaml", request_of("500", "{consumables: {coverage: 7}}"));
    const Ended ended = ask_at(plant.folder(), {"quote", file});
    CHECK(ended.exit_code == 1);
    CHECK_THAT(ended.errors, Contains(file + ":4:9: inside: cell `f1`") &&
                                 Contains(file + ":8:34: extras.consumables.coverage: out of range"));
}

TEST_CASE("a row of a list has the faults of its extras beside its others") {
    PlantCopy plant;
    const std::string list =
        plant.write("list.csv",
                    "request,style,length,width,height,board,quantity,margin,consumables.coverage\n"
                    "A,0201,400,300,250,B-140,0,0.2,7\n");
    const Ended ended = ask_at(plant.folder(), {"quote", list, "--json"});
    CHECK(ended.exit_code == 1);
    CHECK_THAT(ended.output, Contains("quantities") && Contains("extras.consumables.coverage: out of range"));
}

TEST_CASE("errors in a plant's files and in the settings of its models are reported together") {
    PlantCopy plant;
    plant.replace("plant.yaml", "currency: EUR", "currency: euro");
    plant.replace("machines.yaml", "outs_max: 6", "outs_max: 0.5");
    plant.replace("plugins.yaml", "scrap_price: 85, handling: 18", "scrap_prise: 85, handling: -18");
    const auto lines = refusals(plant, {"quote", plant.write("r.yaml", plain_request("R-1", "500"))}, 3);
    REQUIRE(lines.size() == 5);
    CHECK_THAT(lines[0], Contains("plant.yaml:") && Contains("unknown currency"));
    CHECK_THAT(lines[1], Contains("machines.yaml:") && Contains("outs_max"));
    CHECK_THAT(lines[2], Contains("plugins.yaml:") && Contains("plugins.scrap.scrap_price: missing"));
    CHECK_THAT(lines[3], Contains("plugins.yaml:") && Contains("did you mean 'scrap_price'?"));
    CHECK_THAT(lines[4], Contains("plugins.yaml:") && Contains("plugins.scrap.handling: out of range"));
}

TEST_CASE("a missing plugin is reported with the errors of the plant's files") {
    PlantCopy plant;
    plant.replace("plant.yaml", "currency: EUR", "currency: euro");
    plant.replace("plugins.yaml", "  - setup: {}", "  - setup: {}\n  - polish: {}");
    const auto lines = refusals(plant, {"plugin", "list"}, 3);
    REQUIRE(lines.size() == 2);
    CHECK_THAT(lines[0], Contains("plant.yaml:") && Contains("unknown currency"));
    CHECK_THAT(lines[1], Contains("model polish: no such plugin"));
}

TEST_CASE("the demo plant starts without a warning, and its requests are quoted without one about their settings") {
    const Ended ended = quote_demo(all_demo_requests());
    CHECK(ended.errors.find("warning") == std::string::npos);
    CHECK(ended.output.find("unusual") == std::string::npos);
}
