// What if a number were another: before, after, and the difference line by line, by the real program.
#include <catch2/catch.hpp>
#include <cmath>
#include <filesystem>
#include <map>
#include <nlohmann/json.hpp>

#include "tests/system/face.hpp"
#include "tests/system/set_plant.hpp"

using namespace flutebook::fixture;
using Catch::Matchers::Contains;
using Json = nlohmann::ordered_json;
namespace fs = std::filesystem;

namespace {

Ended with(const std::string& number, const std::vector<std::string>& changes,
           const std::vector<std::string>& more = {}) {
    std::vector<std::string> options;
    for (const std::string& change : changes) options.insert(options.end(), {"--with", change});
    options.insert(options.end(), more.begin(), more.end());
    return quote_demo({demo_request(number)}, options);
}

Json document_with(const std::string& number, const std::vector<std::string>& changes) {
    const Ended ended = with(number, changes, {"--json"});
    INFO(ended.errors);
    REQUIRE(ended.exit_code == 0);
    return Json::parse(ended.output);
}

Json plain(const std::string& number) {
    return Json::parse(quote_demo({demo_request(number)}, {"--json"}).output);
}

long long coins(const Json& amount) {
    return std::llround(amount.get<double>() * 10000);
}

// Every file below a folder, with its size and its time.
std::map<std::string, std::pair<std::uintmax_t, fs::file_time_type>> files_in(const std::string& folder) {
    std::map<std::string, std::pair<std::uintmax_t, fs::file_time_type>> result;
    for (const auto& entry : fs::recursive_directory_iterator(folder))
        if (entry.is_regular_file()) result[entry.path().string()] = {entry.file_size(), entry.last_write_time()};
    return result;
}

}  // namespace

TEST_CASE("the figures before a change are the plain quote's, and line differences add up to the cost difference") {
    for (const char* number : {"R-1001", "R-1004", "R-1005", "R-1007"}) {
        const Json document = document_with(number, {"papers.*.price=+5%", "machines.FG1.setup.minutes=15"});
        const Json quotes = plain(number)["requests"][0]["quotes"];
        const Json& quantities = document["requests"][0]["quantities"];
        REQUIRE(quantities.size() == quotes.size());
        for (std::size_t i = 0; i < quotes.size(); ++i) {
            const Json& item = quantities[i];
            CHECK(item["before"]["cost"] == quotes[i]["cost"]);
            CHECK(item["before"]["price_per_thousand"] == quotes[i]["price_per_thousand"]);
            long long before = 0, after = 0, difference = 0;
            for (const Json& line : item["lines"]) {
                before += coins(line["before"]);
                after += coins(line["after"]);
                difference += coins(line["difference"]);
            }
            CHECK(before == coins(item["before"]["cost"]));
            CHECK(after == coins(item["after"]["cost"]));
            CHECK(difference == coins(item["difference"]["cost"]));
            CHECK(difference != 0);
        }
    }
}

TEST_CASE("a change of nothing changes nothing, whatever it names") {
    for (const char* path : {"papers.*.price", "machines.*", "plugins.*.*", "flutes", "allowances", "request.margin"}) {
        const Json document = document_with("R-1001", {std::string(path) + "=+0%"});
        for (const Json& item : document["requests"][0]["quantities"]) {
            CHECK(item["after"] == item["before"]);
            for (const Json& line : item["lines"]) CHECK(line["difference"] == 0);
        }
    }
}

TEST_CASE("a change is what the plant would quote if its file said so") {
    PlantCopy plant;
    plant.replace("plugins.yaml", "power_price: 0.148", "power_price: 0.19");
    const Ended changed = ask_at(plant.folder(), {"quote", demo_request("R-1001"), "--json"});
    const Json quotes = Json::parse(changed.output)["requests"][0]["quotes"];
    const Json document = document_with("R-1001", {"energy.power_price=0.19"});
    for (std::size_t i = 0; i < quotes.size(); ++i) {
        const Json& after = document["requests"][0]["quantities"][i]["after"];
        CHECK(after["cost"] == quotes[i]["cost"]);
        CHECK(after["price_per_thousand"] == quotes[i]["price_per_thousand"]);
    }
}

TEST_CASE("a way that is asked for is taken before and after a change") {
    const Ended ended = with("R-1004", {"energy.power_price=0.19"}, {"--ups", "6", "--json"});
    REQUIRE(ended.exit_code == 0);
    const Json forced = Json::parse(quote_demo({demo_request("R-1004")}, {"--ups", "6", "--json"}).output);
    const Json& quotes = forced["requests"][0]["quotes"];
    const Json quantities = Json::parse(ended.output)["requests"][0]["quantities"];
    for (std::size_t i = 0; i < quotes.size(); ++i) CHECK(quantities[i]["before"]["cost"] == quotes[i]["cost"]);
}

TEST_CASE("what if writes no file, and a quote with it is not saved") {
    const PlantCopy plant;
    const auto before = files_in(plant.folder());
    CHECK(ask_at(plant.folder(), {"quote", demo_request("R-1001"), "--with", "papers.TL125.price=+5%"}).exit_code == 0);
    const Ended saved =
        ask_at(plant.folder(), {"quote", demo_request("R-1001"), "--with", "papers.TL125.price=+5%", "--save"});
    CHECK(saved.exit_code == 2);
    CHECK_THAT(saved.errors, Contains("--save: only the request and the plant as their files are can be saved"));
    CHECK(files_in(plant.folder()) == before);
}

TEST_CASE("a wrong path and a value out of range refuse the request with one line that names the option") {
    const Ended unknown = with("R-1001", {"papers.TL12.price=+5%"});
    CHECK(unknown.exit_code == 1);
    CHECK_THAT(unknown.errors, Contains("--with papers.TL12.price=+5%: no such number: found `TL12` in papers"));
    CHECK(lines_of(unknown.errors).size() == 1);
    const Ended wrong = with("R-1001", {"machines.C1.run_waste=1.5"});
    CHECK(wrong.exit_code == 1);
    CHECK_THAT(wrong.errors, Contains("--with machines.C1.run_waste=1.5: corrugators.C1.run_waste:"));
    const Ended setting = with("R-1001", {"energy.power_price=-4"});
    CHECK(setting.exit_code == 1);
    CHECK_THAT(setting.errors, Contains("--with energy.power_price=-4: plugins.energy.power_price: out of range"));
    CHECK(with("R-1001", {"papers"}).exit_code == 2);
    CHECK(with("R-1001", {"a=1", "a=2"}).exit_code == 2);
}

TEST_CASE("a number beyond what is usual is warned of, as in a file") {
    CHECK_THAT(with("R-1001", {"energy.power_price=14.8"}).output,
               Contains("--with energy.power_price=14.8: plugins.energy.power_price: unusual: found 14.8"));
}

TEST_CASE("a change that nothing can be made with says which limit stops it") {
    const Ended ended = with("R-1001", {"machines.FG1.sheet.width[2]=300"});
    CHECK(ended.exit_code == 1);
    CHECK_THAT(ended.output, Contains("can make this order with these numbers; limits:"));
}

TEST_CASE("a set is compared piece by piece, and the pieces' differences add up to that of the set") {
    SetPlant plant;
    const std::string file = plant.write_request("S-1", "400");
    const Json document = plant.document({"quote", file, "--with", "papers.*.price=+5%", "--json"});
    const Json& quantities = document["requests"][0]["quantities"];
    long long pieces = 0;
    for (const Json& item : quantities)
        if (item.contains("piece")) pieces += coins(item["difference"]["cost"]);
    CHECK(pieces == coins(quantities[0]["difference"]["cost"]));
    CHECK(pieces > 0);
}
