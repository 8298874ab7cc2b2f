// Each request stands alone: what one comes to, what is said about it, and the exit code of the whole.
#include <algorithm>
#include <catch2/catch.hpp>
#include <fstream>
#include <nlohmann/json.hpp>

#include "tests/system/face.hpp"

using namespace flutebook::fixture;
using Catch::Matchers::Contains;
using Catch::Matchers::StartsWith;
using Json = nlohmann::ordered_json;

namespace {

std::vector<std::string> requests_in(const Ended& ended) {
    std::vector<std::string> result;
    const Json document = Json::parse(ended.output);
    for (const Json& json : document["requests"]) result.push_back(json["request"]);
    return result;
}

// From 1.
std::size_t line_of(const std::string& file, const std::string& text) {
    std::ifstream stream(file);
    std::string line;
    std::size_t number = 1;
    while (std::getline(stream, line) && line != text) ++number;
    return number;
}

}  // namespace

TEST_CASE("a request that can be made ends with 0 and complains of nothing") {
    const Ended ended = quote_demo({demo_request("R-1001")});
    CHECK(ended.exit_code == 0);
    CHECK(ended.errors.empty());
    CHECK_THAT(ended.output, Contains("R-1001"));
}

TEST_CASE("a quantity that nothing can make is in the answer, and the code is 1") {
    const Ended ended = quote_demo({demo_request("R-1009"), demo_request("R-1001")}, {"--json"});
    CHECK(ended.exit_code == 1);
    CHECK(ended.errors.empty());
    CHECK(requests_in(ended) == std::vector<std::string>{"R-1009", "R-1001"});
    const Json quote = Json::parse(ended.output)["requests"][0]["quotes"][0];
    CHECK(quote["quantity"] == 100);
    CHECK(quote.size() == 2);
    REQUIRE(quote["refused"].size() > 0);
    for (const Json& way : quote["refused"]) {
        CHECK(way.size() == 2);
        CHECK(!way["candidate"].get<std::string>().empty());
        CHECK(!way["limit"].get<std::string>().empty());
    }
}

TEST_CASE("a bad request costs nothing, says where it is wrong, and stops no other") {
    PlantCopy plant;
    const std::string bad = plant.write("bad.yaml", plain_request("R-1", "500, 0") + "colour: 2\n");
    const std::string good = plant.write("good.yaml", plain_request("R-2", "500"));
    const Ended ended = ask_at(plant.folder(), {"quote", bad, good, "--json"});
    CHECK(ended.exit_code == 1);
    CHECK(requests_in(ended) == std::vector<std::string>{"R-2"});
    const std::vector<std::string> errors = lines_of(ended.errors);
    REQUIRE(errors.size() == 2);
    for (const std::string& error : errors) CHECK(error.rfind(bad + ":", 0) == 0);
    CHECK_THAT(errors[0], Contains(":6:19: quantities"));
    CHECK_THAT(errors[1], Contains(":8:1: ") && Contains("colour"));
}

TEST_CASE("a file that is not there is a bad request") {
    const Ended ended = quote_demo({"nowhere.yaml"});
    CHECK(ended.exit_code == 1);
    CHECK(ended.output.empty());
    CHECK(lines_of(ended.errors).size() == 1);
    CHECK_THAT(ended.errors, Catch::Matchers::StartsWith("nowhere.yaml: "));
}

TEST_CASE("with no request left the JSON document is still whole") {
    const Ended ended = quote_demo({"nowhere.yaml"}, {"--json"});
    CHECK(ended.exit_code == 1);
    CHECK(requests_in(ended).empty());
}

TEST_CASE("files that share a request number are all refused, and others go on") {
    PlantCopy plant;
    const std::string first = plant.write("first.yaml", plain_request("R-1", "500"));
    const std::string second = plant.write("second.yaml", plain_request("R-1", "700"));
    const std::string other = plant.write("other.yaml", plain_request("R-2", "500"));
    const Ended ended = ask_at(plant.folder(), {"quote", first, other, second, "--json"});
    CHECK(ended.exit_code == 1);
    CHECK(requests_in(ended) == std::vector<std::string>{"R-2"});
    CHECK(lines_of(ended.errors) ==
          std::vector<std::string>{second + ":1:10: request: the number is given twice: found `R-1` in " + first +
                                   " as well; give each request its own number, and name each file once"});
}

TEST_CASE("a file that is named twice is refused") {
    const Ended ended = quote_demo({demo_request("R-1001"), demo_request("R-1001")});
    CHECK(ended.exit_code == 1);
    CHECK(ended.output.empty());
    CHECK(lines_of(ended.errors).size() == 1);
}

TEST_CASE("a plant whose files are not fit ends with 3, every error on a line of its own") {
    PlantCopy plant;
    plant.replace("plant.yaml", "currency: EUR", "currency: EURO");
    plant.replace("machines.yaml", "outs_max: 6", "outs_max: 0");
    const Ended ended = ask_at(plant.folder(), {"quote", demo_request("R-1001")});
    CHECK(ended.exit_code == 3);
    CHECK(ended.output.empty());
    const std::vector<std::string> errors = lines_of(ended.errors);
    REQUIRE(errors.size() == 2);
    CHECK_THAT(errors[0], Contains("plant.yaml:") && Contains("EURO"));
    CHECK_THAT(errors[1], Contains("machines.yaml:") && Contains("outs_max"));
}

TEST_CASE("a model that is listed but not built ends with 3, and says where it was looked for") {
    PlantCopy plant;
    plant.replace("plugins.yaml", "  - setup: {}", "  - setup: {}\n  - varnish: {}");
    const Ended ended = ask_at(plant.folder(), {"plugin", "list"});
    CHECK(ended.exit_code == 3);
    CHECK(ended.output.empty());
    const std::string line = std::to_string(line_of(plant.folder() + "/plugins.yaml", "  - varnish: {}"));
    CHECK_THAT(ended.errors,
               StartsWith(plant.folder() + "/plugins.yaml:" + line + ":5: model varnish: no such plugin: ") &&
                   Contains("found neither " + plant.folder() + "/plugins/varnish.so nor ") &&
                   Contains("/lib/flutebook/plugins/varnish.so; build it"));
}

TEST_CASE("a model at fault ends its own request with 3 and no other") {
    PlantCopy plant;
    plant.take_house_rule();
    const std::string faulty = plant.write("faulty.yaml", plain_request("R-1", "500, 13"));
    const std::string good = plant.write("good.yaml", plain_request("R-2", "500"));
    const Ended json = ask_at(plant.folder(), {"quote", faulty, good, "--json"});
    CHECK(json.exit_code == 3);
    CHECK(lines_of(json.errors).size() == 1);
    CHECK_THAT(json.errors, Contains("houserule"));
    const Json requests = Json::parse(json.output)["requests"];
    REQUIRE(requests.size() == 2);
    CHECK(requests[0]["request"] == "R-1");
    CHECK(requests[0]["quotes"].empty());
    CHECK(requests[0]["fault"].get<std::string>() + "\n" == json.errors);
    CHECK(requests[1]["quotes"].size() == 1);

    const Ended text = ask_at(plant.folder(), {"quote", faulty, good});
    CHECK(text.exit_code == 3);
    CHECK_THAT(text.output, Contains("R-2") && !Contains("R-1 "));
}

TEST_CASE("the highest exit code wins, whatever the order") {
    PlantCopy plant;
    plant.take_house_rule();
    const std::string faulty = plant.write("faulty.yaml", plain_request("R-1", "13"));
    CHECK(ask_at(plant.folder(), {"quote", faulty, "nowhere.yaml"}).exit_code == 3);
    CHECK(ask_at(plant.folder(), {"quote", "nowhere.yaml", faulty}).exit_code == 3);
}

TEST_CASE("a quantity that a model refuses is answered with the model's reason") {
    PlantCopy plant;
    plant.take_house_rule();
    const std::string file = plant.write("seven.yaml", plain_request("R-1", "500, 7"));
    const Ended ended = ask_at(plant.folder(), {"quote", file, "--json"});
    CHECK(ended.exit_code == 1);
    const Json quotes = Json::parse(ended.output)["requests"][0]["quotes"];
    REQUIRE(quotes.size() == 2);
    CHECK(quotes[0]["cost"] > 0);
    REQUIRE(quotes[1]["refused"].size() > 0);
    CHECK_THAT(quotes[1]["refused"][0]["limit"].get<std::string>(), Contains("nobody here makes seven"));
    const Ended text = ask_at(plant.folder(), {"quote", file});
    CHECK_THAT(text.output, Contains("nobody here makes seven"));
}

TEST_CASE("a day on the command line replaces the request's own") {
    const std::string file = demo_request("R-1003");
    const auto cost = [&](const std::vector<std::string>& options) -> double {
        return Json::parse(quote_demo({file}, options).output)["requests"][0]["quotes"][0]["cost"];
    };
    CHECK(cost({"--json"}) == cost({"--json", "--date", "2026-08-20"}));
    CHECK(cost({"--json"}) < cost({"--json", "--date", "2026-10-20"}));
    CHECK_THAT(quote_demo({file}, {"--date", "2026-10-20"}).output, Contains("prices of 2026-10-20"));
}

TEST_CASE("answers are the same to the byte on 1, 2 and 8 threads") {
    for (const std::vector<std::string>& form : {std::vector<std::string>{"--json"}, std::vector<std::string>{}}) {
        std::vector<std::string> outputs;
        for (const std::string threads : {"1", "2", "8"}) {
            std::vector<std::string> options = form;
            options.insert(options.end(), {"--explain", "energy.heat", "--threads", threads});
            outputs.push_back(quote_demo(all_demo_requests(), options).output);
        }
        CHECK(outputs[0].size() > 10000);
        CHECK(outputs[0] == outputs[1]);
        CHECK(outputs[0] == outputs[2]);
    }
}
