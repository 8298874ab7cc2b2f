// What a box bears, and the board that it needs: from boards.yaml to the answer.
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "tests/system/face.hpp"

using namespace flutebook::fixture;
using Catch::Matchers::Contains;
using Json = nlohmann::ordered_json;

namespace {

class StrengthPlant : public PlantCopy {
public:
    StrengthPlant() {
        replace("boards.yaml", "paper: SC127}, TL125]}\n\n  C-125",
                "paper: SC127}, TL125], caliper: 2.9, ect: 4.6}\n\n  C-125");
        replace("boards.yaml", "TL170]}\n\n", "TL170], ect: 35 lbf/in}\n\n");
        file_ = write("S-1.yaml", plain_request("S-1", "500, 2000"));
    }
    [[nodiscard]] Ended quote(std::vector<std::string> more) const {
        more.insert(more.begin(), {"quote", file_});
        return ask_at(folder(), more);
    }

private:
    std::string file_;
};

}  // namespace

TEST_CASE("a slotted box on a board with an ect has its estimate, what it was reckoned from, and its caution") {
    const StrengthPlant plant;
    const Ended ended = plant.quote({});
    INFO(ended.errors);
    // 5.87 x 4.6 kN/m x sqrt(1400 mm x 2.9 mm) = 1720.5 N.
    CHECK_THAT(ended.output, Contains("Strength: about 1.72 kN from above") && Contains("ECT 4.60 kN/m") &&
                                 Contains("caliper 2.9 mm") && Contains("an estimate for a dry box"));
    const Json request = Json::parse(plant.quote({"--json"}).output)["requests"][0];
    CHECK(request["strength"]["compression_n"].get<double>() == Approx(1720.5).margin(0.05));
    CHECK(request["strength"]["is_too_low"] == false);
}

TEST_CASE("a box on a board without an ect has no estimate") {
    CHECK(quote_demo({demo_request("R-1001")}).output.find("Strength") == std::string::npos);
}

TEST_CASE("a saved quote keeps its estimate") {
    const StrengthPlant plant;
    REQUIRE(plant.quote({"--save"}).exit_code == 0);
    CHECK_THAT(ask_at(plant.folder(), {"quote", "show", "Q000001"}).output, Contains("Strength: about 1.72 kN"));
    CHECK(
        Json::parse(ask_at(plant.folder(), {"quote", "recheck", "Q000001", "--json"}).output)["saved_files"]["ends"] ==
        "to-the-byte");
}

TEST_CASE("the cheapest board for a strength is named at each quantity, and what the others lack") {
    const StrengthPlant plant;
    const Ended weak = plant.quote({"--board", "any", "--ect", "4.5"});
    INFO(weak.errors);
    CHECK(weak.exit_code == 0);
    CHECK_THAT(weak.output, Contains("Cheapest board for ECT 4.50 kN/m") && Contains("500 boxes: B-140") &&
                                Contains("E-110: boards.yaml gives no ect for it"));
    // 35 lbf/in are 6.13 kN/m: the other board alone.
    const Json search = Json::parse(plant.quote({"--ect", "5", "--json"}).output)["requests"][0];
    CHECK(search["cheapest"][0]["board"] == "C-175");
    CHECK(search["cheapest"][1]["board"] == "C-175");
    const Ended none = plant.quote({"--bct", "30"});
    CHECK(none.exit_code == 1);
    CHECK_THAT(none.output, Contains("no board serves") && Contains("the box is estimated below 30 kN"));
}

TEST_CASE("a search for a board takes no other comparison, and needs a strength") {
    const StrengthPlant plant;
    CHECK(plant.quote({"--ect", "4", "--save"}).exit_code == 2);
    CHECK(plant.quote({"--board", "any"}).exit_code == 2);
    CHECK(plant.quote({"--ect", "0"}).exit_code == 2);
    CHECK(plant.quote({"--board", "B-140", "--ect", "4"}).exit_code == 2);
}
