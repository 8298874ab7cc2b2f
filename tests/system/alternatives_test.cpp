// A request beside itself: on several boards, at several margins or prices, and by a way that is asked for.
#include <catch2/catch.hpp>
#include <cmath>
#include <nlohmann/json.hpp>

#include "tests/system/face.hpp"
#include "tests/system/set_plant.hpp"

using namespace flutebook::fixture;
using Catch::Matchers::Contains;
using Json = nlohmann::ordered_json;

namespace {

// Where a rule of a price stands is another file here and there.
Json without_places(Json quotes) {
    for (Json& quote : quotes)
        if (quote.contains("price_rules"))
            for (Json& rule : quote["price_rules"]) rule.erase("at");
    return quotes;
}

// The alternatives of one demo request, which may have refusals among them.
Json alternatives(const std::string& number, std::vector<std::string> options) {
    options.emplace_back("--json");
    Json items = Json::parse(quote_demo({demo_request(number)}, options).output)["requests"][0]["alternatives"];
    for (Json& item : items)
        if (item.contains("quotes")) item["quotes"] = without_places(item["quotes"]);
    return items;
}

// The quotes of a demo request after this was changed in its file.
Json quotes_after(const std::string& number, const std::string& from, const std::string& to) {
    std::string name = demo_request(number);
    name = name.substr(name.find("requests/"));
    PlantCopy changed;
    changed.replace(name, from, to);
    const Ended ended = ask_at(changed.folder(), {"quote", changed.folder() + "/" + name, "--json"});
    return without_places(Json::parse(ended.output)["requests"][0]["quotes"]);
}

Json quotes_by(const std::string& number, std::vector<std::string> options) {
    options.emplace_back("--json");
    return without_places(Json::parse(quote_demo({demo_request(number)}, options).output)["requests"][0]["quotes"]);
}

}  // namespace

TEST_CASE("each board is what the request would say on it") {
    const Json items = alternatives("R-1001", {"--board", "B-140,C-125"});
    REQUIRE(items.size() == 2);
    CHECK(items[0]["quotes"] == quotes_by("R-1001", {}));
    CHECK(items[1]["quotes"] == quotes_after("R-1001", "board: B-140", "board: C-125"));
    CHECK(items[1]["board"] == "C-125");
}

TEST_CASE("each margin is what the request would say at it, in per cent with or without the sign") {
    const Json items = alternatives("R-1001", {"--margin", "15, 18%,22"});
    REQUIRE(items.size() == 3);
    CHECK(items[0]["quotes"] == quotes_after("R-1001", "margin: 0.18", "margin: 0.15"));
    CHECK(items[1]["quotes"] == quotes_by("R-1001", {}));
    CHECK(items[2]["quotes"] == quotes_after("R-1001", "margin: 0.18", "margin: 0.22"));
}

TEST_CASE("a price is quoted as it is given, at the margin that it leaves above the cost") {
    const Json items = alternatives("R-1001", {"--price", "590"});
    REQUIRE(items.size() == 1);
    for (std::size_t i = 0; i < items[0]["quotes"].size(); ++i) {
        const Json& quote = items[0]["quotes"][i];
        CHECK(quote["price_per_thousand"] == 590);
        const double cost = quote["cost"].get<double>() / quote["quantity"].get<double>() * 1000;
        CHECK(items[0]["margins"][i].get<double>() == Approx(1 - cost / 590).margin(1e-12));
    }
}

TEST_CASE("a price below the cost is a warning, not a refusal") {
    const Ended ended = quote_demo({demo_request("R-1001")}, {"--price", "590"});
    CHECK(ended.exit_code == 0);
    CHECK_THAT(ended.output, Contains("--price 590: the price at 500 is below the cost: found 590"));
    CHECK_THAT(ended.output, Contains("-10.97 %"));
}

TEST_CASE("a price below cost is answered with advice for a given price, and with other advice for a given margin") {
    const std::string by_price = quote_demo({demo_request("R-1001")}, {"--price", "590"}).output;
    CHECK_THAT(by_price, Contains("a price that is not below it") && !Contains("raise the margin"));
    const std::string by_margin = quote_demo({demo_request("R-1001")}, {"--margin", "-5"}).output;
    CHECK_THAT(by_margin, Contains("raise the margin") && !Contains("ask for a price"));
}

TEST_CASE("with other numbers, boards, margins and prices are what the plant would say if its file had these numbers") {
    PlantCopy plant;
    plant.replace("plugins.yaml", "power_price: 0.148", "power_price: 0.19");
    const std::vector<std::vector<std::string>> asked = {
        {"--board", "B-140,C-125"}, {"--margin", "15,22"}, {"--price", "700"}, {"--board", "C-125", "--ups", "1"}};
    for (const std::vector<std::string>& options : asked) {
        std::vector<std::string> words = {"quote", demo_request("R-1001"), "--json"};
        words.insert(words.end(), options.begin(), options.end());
        Json by_file = Json::parse(ask_at(plant.folder(), words).output)["requests"][0]["alternatives"];
        std::vector<std::string> with = options;
        with.insert(with.end(), {"--with", "energy.power_price=0.19"});
        const Json items = alternatives("R-1001", with);
        REQUIRE(items.size() == by_file.size());
        for (std::size_t i = 0; i < items.size(); ++i) {
            CHECK(items[i]["quotes"] == without_places(by_file[i]["quotes"]));
            CHECK(items[i]["margins"] == by_file[i]["margins"]);
        }
    }
}

TEST_CASE("a number of the request that is changed counts on every board") {
    const Json items = alternatives("R-1001", {"--board", "B-140,C-125", "--with", "request.colours=1"});
    REQUIRE(items.size() == 2);
    CHECK(items[0]["quotes"] == quotes_after("R-1001", "colours: 2", "colours: 1"));
    CHECK(items[1]["quotes"] != alternatives("R-1001", {"--board", "C-125"})[0]["quotes"]);
}

TEST_CASE("alternatives with other numbers say first which") {
    const std::vector<std::string> options = {"--board", "C-125", "--with", "energy.power_price=0.19"};
    CHECK_THAT(quote_demo({demo_request("R-1001")}, options).output,
               Contains("With other numbers") && Contains("plugins.energy.power_price") && Contains("0.148"));
    std::vector<std::string> as_json = options;
    as_json.emplace_back("--json");
    const Json request = Json::parse(quote_demo({demo_request("R-1001")}, as_json).output)["requests"][0];
    CHECK(request["changed"] ==
          Json::parse(R"([{"path": "plugins.energy.power_price", "was": "0.148", "now": "0.19"}])"));
    CHECK_FALSE(Json::parse(quote_demo({demo_request("R-1001")}, {"--board", "C-125", "--json"}).output)["requests"][0]
                    .contains("changed"));
}

TEST_CASE("a margin that is set twice is refused with both options") {
    for (const char* option : {"--margin", "--price"}) {
        const Ended twice = quote_demo({demo_request("R-1001")}, {"--with", "request.margin=0.2", option, "20"});
        CHECK(twice.exit_code == 2);
        CHECK_THAT(twice.errors, Contains("--with request.margin: is set by " + std::string(option) + " as well"));
    }
    CHECK(quote_demo({demo_request("R-1001")}, {"--rank", "--board", "C-125"}).exit_code == 2);
}

TEST_CASE("boards and margins are crossed, board by board") {
    const Json items = alternatives("R-1001", {"--board", "B-140,C-125", "--margin", "15,20"});
    REQUIRE(items.size() == 4);
    CHECK(items[1]["board"] == "B-140");
    CHECK(items[1]["margin"] == 0.2);
    CHECK(items[2]["board"] == "C-125");
    CHECK(items[2]["margin"] == 0.15);
}

TEST_CASE("a board that does not fit says why in its place and does not stop the others") {
    const Json items = alternatives("R-1001", {"--board", "NONE,C-125"});
    CHECK(items[0]["quotes"].is_null());
    CHECK_THAT(items[0]["complaints"][0].get<std::string>(), Contains("unknown board: found `NONE`"));
    CHECK(items[1]["quotes"].size() == 3);
    const Ended shown = quote_demo({demo_request("R-1001")}, {"--board", "NONE,C-125"});
    CHECK(shown.exit_code == 1);
    CHECK_THAT(shown.output, Contains("no answer") && Contains("unknown board: found `NONE`") && Contains("C-125"));
    CHECK(shown.errors.empty());
}

TEST_CASE("a set is answered at a price, piece by piece") {
    SetPlant plant;
    const std::string file = plant.write_request("S-1", "400, 800");
    const Json items = plant.document({"quote", file, "--price", "9000", "--json"})["requests"][0]["alternatives"];
    CHECK(items[0]["quotes"].size() == 2);
    CHECK(items[0]["quotes"][1]["price_per_thousand"] == 9000);
    for (const Json& piece : items[0]["pieces"]) CHECK(piece["quotes"].size() == 2);
}

TEST_CASE("options that answer another question do not stand together, and a price has the coins of the currency") {
    const std::string file = demo_request("R-1001");
    CHECK(quote_demo({file}, {"--margin", "15", "--price", "590"}).exit_code == 2);
    CHECK(quote_demo({file}, {"--board", "B-140", "--save"}).exit_code == 2);
    CHECK(quote_demo({file}, {"--margin", "15,15"}).exit_code == 2);
    CHECK(quote_demo({file}, {"--margin", "100"}).exit_code == 2);
    const Ended share = quote_demo({file}, {"--margin", "0.15"});
    CHECK(share.exit_code == 2);
    CHECK_THAT(share.errors, Contains("in per cent of the price") && Contains("0.5%"));
    CHECK(quote_demo({file}, {"--margin", "0.15%"}).exit_code == 0);
    CHECK(quote_demo({file}, {"--price", "0"}).exit_code == 2);
    const Ended broken = quote_demo({file}, {"--price", "590.001"});
    CHECK(broken.exit_code == 1);
    CHECK_THAT(broken.errors, Contains("--price: no price in EUR: found 590.001, expected at most 2 decimals"));
}

TEST_CASE("a way that is asked for is taken though another is cheaper") {
    const Json free = quotes_by("R-1004", {});
    const double roll = free[0]["roll_width_mm"].get<double>() == 2050 ? 1850 : 2050;
    for (const Json& quote : quotes_by("R-1004", {"--corrugator", "C1", "--roll", std::to_string(int(roll))})) {
        CHECK(quote["corrugator"] == "C1");
        CHECK(quote["roll_width_mm"] == roll);
    }
    const Json six = quotes_by("R-1004", {"--ups", "6"});
    for (std::size_t i = 0; i < six.size(); ++i) {
        CHECK(six[i]["ups"] == 6);
        CHECK(six[i]["cost"].get<double>() >= free[i]["cost"].get<double>());
    }
}

TEST_CASE("the way that is the cheapest anyway is the plain quote when it is asked for") {
    const Json free = quotes_by("R-1001", {});
    const std::string roll = std::to_string(int(free[2]["roll_width_mm"].get<double>()));
    const Json forced = quotes_by("R-1001", {"--corrugator", free[2]["corrugator"].get<std::string>(), "--roll", roll});
    CHECK(forced[2]["lines"] == free[2]["lines"]);
    CHECK(forced[2]["price_per_thousand"] == free[2]["price_per_thousand"]);
}

TEST_CASE("a way that cannot be had says which limit stops it") {
    const auto refused = [](const std::string& number, const std::vector<std::string>& options) {
        const Ended ended = quote_demo({demo_request(number)}, options);
        CHECK(ended.exit_code == 1);
        return ended.output;
    };
    CHECK_THAT(refused("R-1001", {"--corrugator", "C2"}),
               Contains("roll width 1850 mm is above the 1800 mm of C2") && Contains("way asked for C2"));
    CHECK_THAT(refused("R-1001", {"--roll", "2100"}),
               Contains("the papers of board B-140 are stocked together in 1850 mm, 2050 mm"));
    CHECK_THAT(refused("R-1004", {"--ups", "7"}),
               Contains("the ways that fit hold 4, 6, 8") && Contains("stops 7 or more along the chop, DC2"));
    const Ended unknown = quote_demo({demo_request("R-1001")}, {"--corrugator", "C9"});
    CHECK(unknown.exit_code == 1);
    CHECK_THAT(unknown.errors, Contains("--corrugator: unknown corrugator: found `C9`; expected one of `C1`, `C2`"));
    CHECK(quote_demo({demo_request("R-1001")}, {"--ups", "0"}).exit_code == 2);
    CHECK(quote_demo({demo_request("R-1001")}, {"--ups", "6", "--save"}).exit_code == 2);
}
