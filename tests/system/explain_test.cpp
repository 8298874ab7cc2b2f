// --explain: a figure walked down to what people wrote in their files.
#include <algorithm>
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <regex>
#include <set>

#include "tests/system/face.hpp"

using namespace flutebook::fixture;
using Catch::Matchers::Contains;
using Json = nlohmann::ordered_json;

namespace {

Json explained(const std::string& line, const std::string& number = "R-1001") {
    return Json::parse(
        quote_demo({demo_request(number)}, {"--json", "--explain", line}).output)["requests"][0]["quotes"][0];
}

const Json* figure(const Json& trail, const std::string& name) {
    for (const Json& json : trail["figures"])
        if (json["name"] == name) return &json;
    return nullptr;
}

}  // namespace

TEST_CASE("each amount of an explained line has a trail that begins with it") {
    const Json quote = explained("paper");
    std::vector<double> amounts;
    for (const Json& line : quote["lines"])
        if (line["line"] == "paper") amounts.push_back(line["amount"]);
    REQUIRE(quote["explain"].size() == amounts.size());
    for (std::size_t i = 0; i < amounts.size(); ++i) {
        const Json& first = quote["explain"][i]["figures"][0];
        CHECK(first["kind"] == "amount");
        CHECK(first["value"] == amounts[i]);
        CHECK(first["model"] == "paper");
    }
}

TEST_CASE("a trail leads to the place in the plant's files where a number was written") {
    const Json trail = explained("paper")["explain"][0];
    const Json* price = figure(trail, "ply.price");
    REQUIRE(price != nullptr);
    CHECK((*price)["kind"] == "fact");
    CHECK((*price)["model"].is_null());
    REQUIRE((*price)["places"].size() == 1);
    CHECK(std::regex_match((*price)["places"][0].get<std::string>(), std::regex("(.*/)?papers\\.yaml:[0-9]+:[0-9]+")));
    const Json heat = explained("energy.heat")["explain"][0];
    const Json* setting = figure(heat, "energy.boiler_efficiency");
    REQUIRE(setting != nullptr);
    CHECK((*setting)["kind"] == "setting");
    CHECK((*setting)["value"] == 0.82);
}

TEST_CASE("every figure of a trail is reached from its first") {
    const Json quote = explained("energy.power", "R-1007");
    REQUIRE(quote["explain"].size() == 4);
    for (const Json& trail : quote["explain"]) {
        std::set<std::size_t> reached;
        std::vector<std::size_t> open = {0};
        while (!open.empty()) {
            const std::size_t at = open.back();
            open.pop_back();
            REQUIRE(at < trail["figures"].size());
            if (!reached.insert(at).second) continue;
            for (const Json& input : trail["figures"][at]["inputs"]) open.push_back(input);
        }
        CHECK(reached.size() == trail["figures"].size());
    }
}

TEST_CASE("the printed trail tells each figure once and refers to it afterwards") {
    const Ended ended = quote_demo({demo_request("R-1007")}, {"--explain", "energy.power"});
    CHECK(ended.exit_code == 0);
    std::size_t walks = 0;
    std::set<std::string> told;
    std::size_t references = 0;
    const std::regex telling(R"( *\[([0-9]+)\] ([^=]+) = .*)");
    const std::regex referring(R"( *([a-z_.]+.*): see \[([0-9]+)\])");
    std::smatch found;
    for (const std::string& line : lines_of(ended.output)) {
        CHECK(line.size() <= 100);
        if (std::regex_match(line, found, telling)) {
            if (found[1] == "1") {
                told.clear();
                ++walks;
            }
            CHECK(told.insert(found[2]).second);
            CHECK(found[1] == std::to_string(told.size()));
        } else if (std::regex_match(line, found, referring)) {
            CHECK(told.count(found[1]) == 1);
            ++references;
        }
    }
    CHECK(walks > 3);
    CHECK(references > 10);
}

TEST_CASE("a line that charges nothing here is explained as such") {
    const Ended ended = quote_demo({demo_request("R-1003")}, {"--explain", "ink"});
    CHECK(ended.exit_code == 0);
    CHECK_THAT(ended.output, Contains("Behind `ink`: it charges nothing here"));
    CHECK(explained("ink", "R-1003")["explain"].empty());
}

TEST_CASE("a line that no model has is refused with the nearest name") {
    const Ended ended = quote_demo({demo_request("R-1001")}, {"--explain", "energy.heet"});
    CHECK(ended.exit_code == 1);
    CHECK(ended.output.empty());
    CHECK_THAT(ended.errors, Contains("energy.heet") && Contains("energy.heat"));
}
