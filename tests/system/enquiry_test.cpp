// An enquiry typed in a line, through the program.
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "tests/system/face.hpp"

using namespace flutebook::fixture;
using Catch::Matchers::StartsWith;

TEST_CASE("an enquiry is answered below what was understood of it") {
    const PlantCopy plant;
    const Ended ended = ask_at(plant.folder(), {"quote", "0201 400x300x250 B-140 500 2c 18% 2026-10-15"});
    CHECK(ended.exit_code == 0);
    CHECK_THAT(ended.output, StartsWith("Understood: style 0201, inside 400 x 300 x 250 mm, board B-140, quantity 500, "
                                        "colours 2, margin 18%, date 2026-10-15, request E-"));
}

TEST_CASE("what is wrong with an extra of an enquiry stands at its column of the line") {
    const PlantCopy plant;
    const Ended ended = ask_at(plant.folder(), {"quote", "0201 400x300x250 B-140 500 18% delivery.distance=-3"});
    CHECK(ended.exit_code == 1);
    CHECK_THAT(ended.errors, StartsWith("enquiry:1:32: extras.delivery.distance: out of range: found -3"));
}

TEST_CASE("an empty line is an enquiry for nothing, not a file without a name") {
    const PlantCopy plant;
    const Ended ended = ask_at(plant.folder(), {"quote", ""});
    CHECK(ended.exit_code == 1);
    CHECK_THAT(ended.errors, StartsWith("enquiry:1:1: an empty enquiry: found an empty line"));
    CHECK(lines_of(ended.errors).size() == 1);
}

TEST_CASE("quantities that may be one number are warned of, and counted as they stand") {
    PlantCopy plant;
    const std::string file = plant.write("r.yaml", plain_request("R-1", "2,500"));
    const Ended ended = ask_at(plant.folder(), {"quote", file});
    CHECK(ended.exit_code == 0);
    CHECK(ended.output.find("quantities: unusual: found 2 and 500") != std::string::npos);
}

TEST_CASE("what was understood of an enquiry stands in its JSON, and nothing of the kind in a file's") {
    PlantCopy plant;
    const auto request = [&](const std::string& what) {
        return nlohmann::json::parse(ask_at(plant.folder(), {"quote", what, "--json"}).output)["requests"][0];
    };
    const std::string understood = request("0201 400x300x250 B-140 500 2c 18% 2026-10-15")["understood"];
    CHECK_THAT(understood, StartsWith("style 0201, inside 400 x 300 x 250 mm, board B-140, quantity 500, colours 2"));
    CHECK_FALSE(request(plant.write("r.yaml", plain_request("R-1", "500"))).contains("understood"));
}
