// What moves a price: each number behind it moved alone by a tenth, by the real program.
#include <catch2/catch.hpp>
#include <cmath>
#include <nlohmann/json.hpp>
#include <set>

#include "tests/system/face.hpp"
#include "tests/system/set_plant.hpp"

using namespace flutebook::fixture;
using Catch::Matchers::Contains;
using Json = nlohmann::ordered_json;

namespace {

Json ranked(const std::string& number, std::vector<std::string> options = {}) {
    options.insert(options.begin(), "--rank");
    options.emplace_back("--json");
    const Ended ended = quote_demo({demo_request(number)}, options);
    REQUIRE(ended.exit_code == 0);
    return Json::parse(ended.output)["requests"][0]["quantities"];
}

const Json& everyday() {
    static const Json quantities = ranked("R-1001");
    return quantities;
}

long long ten_thousandths_of(const Json& amount) {
    return std::llround(amount.get<double>() * 10000);
}

Json moved(const Json& quantity, const std::string& path) {
    for (const Json& number : quantity["moved"])
        if (number["path"] == path) return number;
    FAIL("not among the numbers that move the price: " << path);
    return {};
}

}  // namespace

TEST_CASE("numbers are ranked by how far they move the price, and each price is the quote's and its change") {
    REQUIRE(everyday().size() == 3);
    for (const Json& quantity : everyday()) {
        REQUIRE(quantity["moved"].size() > 50);
        long long last = std::llabs(ten_thousandths_of(quantity["moved"][0]["change"]));
        std::set<std::string> paths;
        for (const Json& number : quantity["moved"]) {
            CHECK(ten_thousandths_of(number["price_per_thousand"]) -
                      ten_thousandths_of(quantity["price_per_thousand"]) ==
                  ten_thousandths_of(number["change"]));
            CHECK(ten_thousandths_of(number["change"]) != 0);
            CHECK(std::llabs(ten_thousandths_of(number["change"])) <= last);
            last = std::llabs(ten_thousandths_of(number["change"]));
            CHECK(paths.insert(number["path"]).second);
        }
    }
}

TEST_CASE("a ranked price is that of the same change asked for alone") {
    const Json& quantity = everyday()[2];
    std::size_t asked = 0;
    for (std::size_t i = 0; i < quantity["moved"].size(); i += 7) {
        const Json& number = quantity["moved"][i];
        if (number["path"].get<std::string>().find('*') != std::string::npos) continue;
        const std::string change = number["path"].get<std::string>() + "=" + number["now"].get<std::string>();
        const Ended ended = quote_demo({demo_request("R-1001")}, {"--with", change, "--json"});
        INFO(change << ended.errors);
        REQUIRE(ended.exit_code == 0);
        const Json item = Json::parse(ended.output)["requests"][0]["quantities"][2];
        CHECK(item["after"]["price_per_thousand"] == number["price_per_thousand"]);
        ++asked;
    }
    CHECK(asked > 7);
}

TEST_CASE("papers, machines, settings given or not, and the request stand in one ranking") {
    const Json& quantity = everyday()[0];
    CHECK(moved(quantity, "papers.TL125.price[2026-09-01].per_tonne")["now"] == "572");
    CHECK(moved(quantity, "converters.FG1.setup.minutes")["now"] == "27.5");
    CHECK(moved(quantity, "plugins.energy.power_price")["was"] == "0.148");
    CHECK(moved(quantity, "plugins.energy.boiler_efficiency")["was"] == "0.82");
    CHECK(moved(quantity, "request.margin")["now"] == "0.198");
    CHECK(moved(quantity, "request.inside.length")["now"] == "440");
}

TEST_CASE("a count is moved by at least one, and what cannot stand more by a tenth less") {
    const Json& quantity = everyday()[0];
    CHECK(moved(quantity, "request.quantities[1]")["now"] == "550");
    CHECK(moved(quantity, "converters.FG1.setup.sheets")["now"] == "44");
    CHECK(moved(quantity, "request.colours")["now"] == "3");
    const Json share = moved(everyday()[2], "plugins.starch.starch_share");
    CHECK(share["tenth"] == "less");
    CHECK(share["now"] == "0.8595");
    CHECK_THAT(quote_demo({demo_request("R-1001")}, {"--rank", "5000"}).output, Contains("0.8595 (less)"));
}

TEST_CASE("a setting is a count if its range, default and values are whole numbers: there are no 1.1 deliveries") {
    const Json drops = moved(ranked("R-1001")[0], "request.extras.delivery.deliveries");
    CHECK(drops["was"] == "1");
    CHECK(drops["now"] == "2");
}

TEST_CASE("a ranking with other numbers starts from their price, and says first which they are") {
    const std::vector<std::string> change = {"--with", "energy.power_price=0.19"};
    std::vector<std::string> options = change;
    options.emplace_back("--json");
    const Json beside = Json::parse(quote_demo({demo_request("R-1001")}, options).output)["requests"][0];
    const Json from_there = ranked("R-1001", change);
    for (std::size_t i = 0; i < from_there.size(); ++i)
        CHECK(from_there[i]["price_per_thousand"] == beside["quantities"][i]["after"]["price_per_thousand"]);
    const Json power = moved(from_there[0], "plugins.energy.power_price");
    CHECK(power["was"] == "0.19");
    CHECK(power["now"] == "0.209");
    CHECK_THAT(quote_demo({demo_request("R-1001")}, {"--rank", "--with", "energy.power_price=0.19"}).output,
               Contains("With other numbers"));
}

TEST_CASE("a ranking with other numbers tells what is doubtful of them, as the prices beside one another do") {
    const std::vector<std::string> change = {"--with", "energy.power_price=14.8"};
    const auto answer_of = [](std::vector<std::string> options) {
        options.emplace_back("--json");
        return Json::parse(quote_demo({demo_request("R-1001")}, options).output)["requests"][0];
    };
    const Json beside = answer_of(change);
    REQUIRE(beside["warnings"].size() == 1);
    CHECK(answer_of({"--rank", "500", change[0], change[1]})["warnings"] == beside["warnings"]);
    CHECK_THAT(quote_demo({demo_request("R-1001")}, {"--rank", "500", change[0], change[1]}).output,
               Contains("plugins.energy.power_price: unusual: found 14.8"));
    CHECK_FALSE(answer_of({"--rank", "500"}).contains("warnings"));
}

TEST_CASE("a ranking has the same bytes on one thread and on two") {
    for (const char* number : {"R-1001", "R-1007"}) {
        const auto on = [&](const char* threads) {
            return quote_demo({demo_request(number)}, {"--rank", "--json", "--threads", threads}).output;
        };
        CHECK(on("1") == on("2"));
    }
}

TEST_CASE("a quantity that is named is ranked whole, the first of all otherwise") {
    const std::string file = demo_request("R-1001");
    const std::string whole = quote_demo({file}, {"--rank", "5000"}).output;
    CHECK_THAT(whole, Contains("5 000 boxes at 420.41 EUR a thousand: what moves the price"));
    CHECK_THAT(whole, !Contains("more numbers") && !Contains("500 boxes at"));
    CHECK_THAT(quote_demo({file}, {"--rank"}).output,
               Contains("more numbers, each by less; --rank 500 lists them all"));
    const Ended unknown = quote_demo({file}, {"--rank", "700"});
    CHECK(unknown.exit_code == 1);
    CHECK_THAT(unknown.errors,
               Contains("asks for no such quantity: found --rank 700, expected one of 500, 1000, 5000"));
    CHECK(quote_demo({file}, {"--rank", "--save"}).exit_code == 2);
}

TEST_CASE("a set is ranked by the numbers of all its pieces") {
    SetPlant plant;
    const std::string file = plant.write_request("S-1", "400");
    const Json quantity = plant.document({"quote", file, "--rank", "--json"})["requests"][0]["quantities"][0];
    CHECK(quantity["moved"].size() > 40);
    CHECK(quantity["price_per_thousand"] ==
          plant.document({"quote", file, "--json"})["requests"][0]["quotes"][0]["price_per_thousand"]);
}

TEST_CASE("what cannot be made has no ranking") {
    const Ended ended = quote_demo({demo_request("R-1009")}, {"--rank"});
    CHECK(ended.exit_code == 1);
    CHECK_THAT(ended.output, Contains("cannot be made"));
}
