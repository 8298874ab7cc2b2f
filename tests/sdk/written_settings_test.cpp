// Settings as a plant writes them, before the real program: values by date, one plugin's file under two names, a choice
// that another model makes, and values that are unusual.
#include <fmt/format.h>

#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>
#include <nlohmann/json.hpp>

#include "tests/system/face.hpp"

using namespace flutebook::fixture;
using Catch::Matchers::Contains;
using Json = nlohmann::json;
namespace fs = std::filesystem;

namespace {

constexpr const char* plain_power = "power_price: 0.148";

std::string answer(const PlantCopy& plant, const std::vector<std::string>& words) {
    const Ended ended = ask_at(plant.folder(), words);
    INFO(ended.errors);
    CHECK(ended.exit_code == 0);
    return ended.output;
}

Json quotes_of(const PlantCopy& plant, const std::string& request, const std::vector<std::string>& options = {}) {
    std::vector<std::string> words = {"quote", request, "--json"};
    words.insert(words.end(), options.begin(), options.end());
    return Json::parse(answer(plant, words))["requests"][0]["quotes"];
}

// Takes 500 of R-1001 as an order, makes them five days after the request as the quote allows, and costs them.
std::string cost_of_order_made_later(PlantCopy& plant) {
    const Json quote = quotes_of(plant, demo_request("R-1001"), {"--save"})[0];
    answer(plant, {"order", "Q000001", "500", "--as", "26-0417"});
    const double fed = quote["fed"][1];
    const std::string web =
        plant.write("w.csv", fmt::format("ref,date,shift,corrugator,order,metres,order_change_metres,good_sheets\n"
                                         "W1,2026-10-20,early,C1,26-0417,{},25,{}\n",
                                         quote["web_length_m"].get<double>(), quote["good"][0].get<double>()));
    const std::string machine =
        plant.write("m.csv", fmt::format("ref,date,shift,converter,order,fed,setup_sheets,rejected,good_boxes\n"
                                         "M1,2026-10-20,early,FG1,26-0417,{},40,{},500\n",
                                         fed, fed - 540));
    answer(plant, {"post", web, machine});
    return answer(plant, {"order", "cost", "26-0417", "--json"});
}

// The plant lists `entry`, and has the example's file.
void add_example(PlantCopy& plant, const std::string& model, const std::string& entry) {
    const fs::path folder = fs::path(plant.folder()) / "plugins";
    fs::create_directories(folder);
    fs::copy_file(fs::path(FLUTEBOOK_EXAMPLE_PLUGINS) / (model + ".so"), folder / (model + ".so"));
    plant.replace("plugins.yaml", "  - paper: {}", "  - paper: {}\n  - " + entry);
}

// What a line of a quote comes to, under one model's name.
double charged(const Json& quote, const std::string& model, const std::string& line) {
    double sum = 0;
    for (const Json& item : quote["lines"])
        if (item["plugin"] == model && item["line"] == line) sum += item["amount"].get<double>();
    return sum;
}

constexpr const char* two_scraps = "  - paper: {}\n  - sorting: {model: scrap, scrap_price: 0, handling: 9}";

}  // namespace

TEST_CASE("a request is quoted at the values of its date, and refused before the first") {
    PlantCopy plant;
    plant.replace("plugins.yaml", plain_power,
                  "power_price: [{from: 2026-01-01, value: 0.148}, {from: 2026-11-01, value: 0.161}]");
    const auto quoted = [](const PlantCopy& at, const std::string& day) {
        return quotes_of(at, demo_request("R-1001"), {"--date", day});
    };
    const PlantCopy before;
    PlantCopy after;
    after.replace("plugins.yaml", plain_power, "power_price: 0.161");
    CHECK(quoted(plant, "2026-10-31") == quoted(before, "2026-10-31"));
    CHECK(quoted(plant, "2026-11-01") == quoted(after, "2026-11-01"));
    CHECK(quoted(before, "2026-11-01") != quoted(after, "2026-11-01"));

    plant.replace("plugins.yaml", "{from: 2026-01-01, value: 0.148}, ", "");
    const Ended refused = ask_at(plant.folder(), {"quote", demo_request("R-1001")});
    CHECK(refused.exit_code == 1);
    CHECK_THAT(refused.errors,
               Contains("date: energy.power_price has no value on 2026-10-15: its first value counts from "
                        "2026-11-01"));
}

TEST_CASE("an order made later is costed at the settings of its request's date") {
    PlantCopy plain, dated;
    dated.replace("plugins.yaml", plain_power,
                  "power_price: [{from: 2026-01-01, value: 0.148}, {from: 2026-10-18, value: 0.9}]");
    CHECK(cost_of_order_made_later(dated) == cost_of_order_made_later(plain));
    // The later value does count for a request of its days.
    CHECK(quotes_of(dated, demo_request("R-1001"), {"--date", "2026-10-20"})[0]["cost"].get<double>() >
          quotes_of(plain, demo_request("R-1001"), {"--date", "2026-10-20"})[0]["cost"].get<double>());
}

TEST_CASE("one file under two names charges under both, and a saved quote knows both again") {
    PlantCopy plant;
    plant.replace("plugins.yaml", "  - paper: {}", two_scraps);
    const Json list = Json::parse(answer(plant, {"plugin", "list", "--json"}))["plugins"];
    CHECK(std::count_if(list.begin(), list.end(),
                        [](const Json& json) { return json["id"] == "sorting" || json["id"] == "scrap"; }) == 2);
    const Json quote = quotes_of(plant, demo_request("R-1001"), {"--save"})[0];
    const double handling = charged(quote, "scrap", "scrap.handling");
    CHECK(handling > 0);
    CHECK(charged(quote, "sorting", "scrap.handling") == Approx(handling / 2).margin(0.0002));
    CHECK_THAT(answer(plant, {"quote", "recheck", "Q000001"}), Contains("Q000001"));
}

TEST_CASE("one file under two names may work in a process of its own under one of them, with the same answer") {
    PlantCopy together, apart;
    together.replace("plugins.yaml", "  - paper: {}", two_scraps);
    apart.replace("plugins.yaml", "  - paper: {}", two_scraps);
    apart.replace("plugins.yaml", "plugins:\n", "isolation: {sorting: process}\nplugins:\n");
    CHECK(quotes_of(apart, demo_request("R-1001")) == quotes_of(together, demo_request("R-1001")));
    for (const Json& item : Json::parse(answer(apart, {"plugin", "list", "--json"}))["plugins"])
        CHECK(item["isolated"] == (item["id"] == "sorting"));
}

TEST_CASE("a choice may be another model's, and a setting by that choice goes by it") {
    PlantCopy plant;
    add_example(plant, "zone_freight",
                "zone_freight: {rate: {north: 31, south: 40, default: 55}}\n"
                "  - zone_by_size: {}");
    fs::copy_file(FLUTEBOOK_ZONE_BY_SIZE, plant.folder() + "/plugins/zone_by_size.so");
    plant.replace("plugins.yaml", "plugins:\n", "prefer: {zone_freight.zone: zone_by_size}\nplugins:\n");
    // Nobody asked for a zone: up to 999 boxes go north, up to 4999 south, more abroad.
    const Json quotes = quotes_of(plant, demo_request("R-1001"));
    const auto rate = [&](std::size_t quote) {
        for (const Json& line : quotes[quote]["lines"])
            if (line["line"] == "zone_freight") return line["rate"].get<double>();
        return 0.0;
    };
    CHECK(rate(0) == 31);
    CHECK(rate(1) == 40);
    CHECK(rate(2) == 55);
}

TEST_CASE("an unusual value gives a warning with its place, in the text and in JSON, and the order is still quoted") {
    PlantCopy plant;
    add_example(plant, "hand_packing", "hand_packing: {rate: {1: 0.05, 1000: 35}}");
    const std::string what = "plugins.hand_packing.rate.1000: unusual: found 35, usually 0.005 to 1 money";
    const Ended text = ask_at(plant.folder(), {"quote", demo_request("R-1001")});
    CHECK(text.exit_code == 0);
    CHECK_THAT(text.errors, Contains("plugins.yaml:") && Contains(what));
    const Json document = Json::parse(answer(plant, {"quote", demo_request("R-1001"), "--json"}));
    REQUIRE(document["warnings"].size() == 1);
    CHECK(document["warnings"][0]["text"] == what);
    CHECK_THAT(document["warnings"][0]["at"].get<std::string>(), Contains("plugins.yaml:"));
    CHECK(document["requests"][0]["quotes"].size() == 3);
}
