// Prices by the rules of plant.yaml, from the request to what is kept.
#include <catch2/catch.hpp>
#include <cmath>
#include <fstream>
#include <map>
#include <nlohmann/json.hpp>
#include <sstream>

#include "tests/system/face.hpp"
#include "tests/system/set_plant.hpp"

using namespace flutebook::fixture;
using Catch::Matchers::Contains;
using Json = nlohmann::ordered_json;

namespace {

void add_rules(PlantCopy& plant, const std::string& rules) {
    const std::string tolerance = "balance_tolerance: 0.005\n";
    plant.replace("plant.yaml", tolerance, tolerance + "pricing:\n" + rules);
}

std::string without_margin(PlantCopy& plant, const std::string& quantities, const std::string& customer = "") {
    std::string text = plain_request("P-1", quantities);
    const auto at = text.find("margin:");
    REQUIRE(at != std::string::npos);
    text.erase(at, text.find('\n', at) - at + 1);
    return plant.write("P-1.yaml", text + (customer.empty() ? "" : "customer: " + customer + "\n"));
}

Json request_of(const PlantCopy& plant, const std::vector<std::string>& words) {
    const Ended ended = ask_at(plant.folder(), words);
    INFO(ended.errors);
    REQUIRE(ended.exit_code == 0);
    return Json::parse(ended.output)["requests"][0];
}

// The price by this margin alone, in cents.
double cents_by_margin(const Json& quote, double margin) {
    const double cost = quote["cost"].get<double>() / quote["quantity"].get<double>() * 1000;
    return std::round(cost / (1 - margin) * 100);
}

double cents(const Json& amount) {
    return std::round(amount.get<double>() * 100);
}

// Three items: one too small for the least order, one with a margin of its own, one that cannot be made.
std::string small_list(PlantCopy& plant) {
    return plant.write("list.csv",
                       "request,style,length,width,height,board,quantity,margin,date\n"
                       "A,0201,400,300,250,B-140,100,,2026-10-15\n"
                       "B,0201,400,300,250,B-140,5000,0.18,2026-10-15\n"
                       "C,0201,400,300,250,no-board,5000,0.18,2026-10-15\n");
}

}  // namespace

TEST_CASE("a request without a margin has the plant's by quantity, and says which rule made each price") {
    PlantCopy plant;
    add_rules(plant, "  margin: {0: 0.24, 1000: 0.20}\n");
    const std::string file = without_margin(plant, "999, 1000");
    const Json quotes = request_of(plant, {"quote", file, "--json"})["quotes"];
    CHECK(cents(quotes[0]["price_per_thousand"]) == cents_by_margin(quotes[0], 0.24));
    CHECK(cents(quotes[1]["price_per_thousand"]) == cents_by_margin(quotes[1], 0.20));
    for (const Json& quote : quotes) {
        REQUIRE(quote["price_rules"].size() == 1);
        CHECK(quote["price_rules"][0]["rule"] == "quantity-margin");
    }
    const std::string text = ask_at(plant.folder(), {"quote", file, "--sheet", "999"}).output;
    CHECK_THAT(text, Contains("margin by the plant's rules") && Contains("999: margin 24 % by quantity (") &&
                         Contains("1 000: margin 20 % by quantity ("));
    CHECK(text.find("margin 24 % by quantity", text.find("\nPrice\n")) != std::string::npos);
}

TEST_CASE("a row of a list says which rules made its price, in a file as in JSON") {
    PlantCopy plant;
    add_rules(plant, "  margin: {0: 0.24}\n  round_up_to: 5\n  least_order: 900\n");
    const std::string list = small_list(plant);
    const std::string answer = plant.folder() + "/answer.csv";
    CHECK(ask_at(plant.folder(), {"quote", list, "-o", answer}).exit_code == 1);
    std::ifstream file(answer);
    std::vector<std::string> lines;
    for (std::string line; std::getline(file, line);) lines.push_back(line);
    REQUIRE(lines.size() == 4);
    CHECK_THAT(lines[0], Contains("\"not_in_price\",\"price_rules\""));
    CHECK_THAT(lines[1], Contains("\"quantity-margin 0.24; round-up 5; least-order 900\""));
    CHECK_THAT(lines[2], Contains("\"request-margin 0.18; round-up 5\""));
    CHECK(lines[3].find("margin 0.18") == std::string::npos);
    const Json rows = Json::parse(ask_at(plant.folder(), {"quote", list, "--json"}).output)["rows"];
    std::vector<std::string> rules;
    for (const Json& rule : rows[0]["price_rules"]) rules.push_back(rule["rule"]);
    CHECK(rules == std::vector<std::string>{"quantity-margin", "round-up", "least-order"});
}

TEST_CASE("a row of a list says which rules made its price in a workbook as in CSV") {
    PlantCopy plant;
    add_rules(plant, "  margin: {0: 0.24}\n  round_up_to: 5\n  least_order: 900\n");
    const std::string answer = plant.folder() + "/answer.xlsx";
    CHECK(ask_at(plant.folder(), {"quote", small_list(plant), "-o", answer}).exit_code == 1);
    const Ended read = run({{FLUTEBOOK_PYTHON, FLUTEBOOK_WORKBOOK_ROWS, answer}});
    INFO(read.errors);
    const Json rows = Json::parse(read.output);
    REQUIRE(rows.size() == 4);
    std::map<std::string, std::string> letters;  // of each column
    for (const auto& head : rows[0].items()) letters[head.value()] = head.key();
    const std::string rules = letters.at("price_rules"), price = letters.at("new_price");
    CHECK(rows[1][rules] == "quantity-margin 0.24; round-up 5; least-order 900");
    CHECK(rows[1][price] == 9000);
    CHECK(rows[2][rules] == "request-margin 0.18; round-up 5");
    CHECK_FALSE(rows[3].contains(rules));
}

TEST_CASE("a least order raises price and profit and no cost, and rounds what stands in the second currency") {
    PlantCopy plant;
    const std::string file = plant.write("P-1.yaml", plain_request("P-1", "100"));
    const Json before = request_of(plant, {"quote", file, "--json"})["quotes"][0];
    add_rules(plant, "  least_order: 900\n  second_currency: {code: GBP, rate: 0.86}\n");
    const Json after = request_of(plant, {"quote", file, "--json"})["quotes"][0];
    CHECK(after["cost"] == before["cost"]);
    CHECK(after["lines"] == before["lines"]);
    CHECK(after["price_per_thousand"] == 9000);
    CHECK(after["order_value"] == 900);
    CHECK(after["profit"].get<double>() == Approx(900 - after["cost"].get<double>()).margin(1e-9));
    CHECK(after["profit_share"].get<double>() == Approx(1 - after["cost"].get<double>() / 900));
    CHECK(after["second_currency"]["price_per_thousand"] == 7740);
    CHECK(after["second_currency"]["order_value"] == 774);
    const std::string text = ask_at(plant.folder(), {"quote", file}).output;
    CHECK_THAT(text, Contains("raised to the least") && Contains("order of 900.00 (") &&
                         Contains("In GBP, 0.86 for one EUR") && Contains("774.00"));
}

TEST_CASE("a plugin that needs the margin gets the plant's margin for its quantity") {
    PlantCopy plant;
    add_rules(plant, "  margin: {0: 0.3, 1000: 0.1}\n");
    const Json quotes = request_of(plant, {"quote", without_margin(plant, "500, 1000"), "--json"})["quotes"];
    CHECK(quotes[0]["profit_share"].get<double>() == Approx(0.3).margin(1e-4));
    CHECK(quotes[1]["profit_share"].get<double>() == Approx(0.1).margin(1e-4));
}

TEST_CASE("an offer says how long it holds and what quantities are taken, the request's own before the plant's") {
    PlantCopy plant;
    add_rules(plant, "  valid_days: 30\n  tolerance: {under: 0.05, over: 0.1}\n");
    const std::string file =
        plant.write("P-1.yaml", plain_request("P-1", "500") + "tolerance: {under: 0, over: 0.2}\n");
    const Json request = request_of(plant, {"quote", file, "--json"});
    CHECK(request["valid_until"].get<std::string>() > request["page"]["date"].get<std::string>());
    CHECK(request["tolerance"]["over"] == 0.2);
    CHECK_THAT(ask_at(plant.folder(), {"quote", file}).output,
               Contains("valid until") && Contains("quantity 0 % under to 20 % over is taken"));
}

TEST_CASE("a set's price follows the rules by its sets, its pieces none") {
    SetPlant plant;
    add_rules(plant, "  margin: {0: 0.5, 1000: 0.2}\n  round_up_to: 1\n");
    const std::string file = plant.write_request("S-1", "999, 1000");
    std::ostringstream text;
    text << std::ifstream(file).rdbuf();
    std::string request = text.str();
    const auto at = request.find("margin:");
    REQUIRE(at != std::string::npos);
    request.erase(at, request.find('\n', at) - at + 1);
    plant.write("S-2.yaml", request);
    const Json answer = plant.document({"quote", plant.folder() + "/S-2.yaml", "--json"})["requests"][0];
    const std::vector<double> margins = {0.5, 0.2};
    for (std::size_t i = 0; i < 2; ++i) {
        const Json& set = answer["quotes"][i];
        CHECK(set["price_rules"][0]["value"] == margins[i]);
        CHECK(set["price_per_thousand"].get<double>() == std::ceil(cents_by_margin(set, margins[i]) / 100));
        CHECK_FALSE(answer["pieces"][0]["quotes"][i].contains("price_rules"));
    }
}

TEST_CASE("a list needs no margin where the plant has one, and its prices are those of requests") {
    PlantCopy plant;
    add_rules(plant, "  margin: {0: 0.24, 1000: 0.20}\n  round_up_to: 0.05\n  least_order: 400\n");
    const std::string list = plant.write("list.csv",
                                         "request,date,style,length,width,height,board,quantity\n"
                                         "P-1,2026-10-15,0201,400,300,250,B-140,300\n"
                                         "P-2,2026-10-15,0201,400,300,250,B-140,4000\n");
    const Ended ended = ask_at(plant.folder(), {"quote", list, "--json"});
    INFO(ended.errors);
    REQUIRE(ended.exit_code == 0);
    const Json rows = Json::parse(ended.output)["rows"];
    for (const Json& row : rows) {
        const Ended line =
            ask_at(plant.folder(),
                   {"quote", "0201 400x300x250 B-140 " + row["quantity"].get<std::string>() + " 2026-10-15", "--json"});
        INFO(line.errors);
        REQUIRE(line.exit_code == 0);
        const Json quote = Json::parse(line.output)["requests"][0]["quotes"][0];
        CHECK(row["price_per_thousand"] == quote["price_per_thousand"]);
        CHECK(row["order_value"] == quote["order_value"]);
        CHECK(row["price_rules"] == quote["price_rules"]);
    }
    CHECK(rows[0]["order_value"] == 400);
}

TEST_CASE("a quote that brings less than the limit is kept only with a name of its list") {
    PlantCopy plant;
    add_rules(plant, "  approve_below: {0.30: [A. Example]}\n");
    const std::string file = plant.write("P-1.yaml", plain_request("P-1", "500"));
    const Ended warned = ask_at(plant.folder(), {"quote", file});
    CHECK(warned.exit_code == 0);
    CHECK_THAT(warned.output, Contains("it is saved only with the approval of `A. Example`"));
    const Ended refused = ask_at(plant.folder(), {"quote", file, "--save"});
    CHECK(refused.exit_code == 1);
    CHECK_THAT(refused.errors,
               Contains("below 30 % of the order value") && Contains("--approve NAME with one of `A. Example`"));
    const Ended stranger = ask_at(plant.folder(), {"quote", file, "--save", "--approve", "C. Example"});
    CHECK(stranger.exit_code == 1);
    CHECK_THAT(stranger.errors, Contains("`C. Example` may not approve of it"));
    CHECK_FALSE(std::ifstream(plant.folder() + "/ledger.db").good());
    const Ended kept = ask_at(plant.folder(), {"quote", file, "--save", "--approve", "A. Example"});
    CHECK(kept.exit_code == 0);
    CHECK_THAT(ask_at(plant.folder(), {"quote", "show", "Q000001"}).output,
               Contains("approved by A. Example: the profit is below 30 % of the order value"));
    const Json shown = request_of(plant, {"quote", "show", "Q000001", "--json"});
    CHECK(shown["approval"]["by"] == "A. Example");
    const Ended again = ask_at(plant.folder(), {"quote", "recheck", "Q000001", "--json"});
    CHECK(again.exit_code == 0);
    CHECK(Json::parse(again.output)["saved_files"]["ends"] == "to-the-byte");
}

TEST_CASE("a name to approve is for what is saved") {
    const Ended ended = quote_demo({demo_request("R-1001")}, {"--approve", "A. Example"});
    CHECK(ended.exit_code == 2);
    CHECK_THAT(ended.errors, Contains("--approve: is for what is kept"));
}

TEST_CASE("a saved quote is held against today's rules by key") {
    PlantCopy plant;
    add_rules(plant, "  margin: {0: 0.24}\n  round_up_to: 0.05\n");
    const std::string file = without_margin(plant, "500");
    REQUIRE(ask_at(plant.folder(), {"quote", file, "--save"}).exit_code == 0);
    CHECK(ask_at(plant.folder(), {"quote", "recheck", "Q000001"}).exit_code == 0);
    plant.replace("plant.yaml", "{0: 0.24}", "{0: 0.26}");
    const Ended ended = ask_at(plant.folder(), {"quote", "recheck", "Q000001"});
    CHECK(ended.exit_code == 1);
    CHECK_THAT(ended.output, Contains("pricing.margin.0: 0.24 -> 0.26"));
}

TEST_CASE("work done outside is charged as the request says, and only where the plant lists its model") {
    PlantCopy plant;
    const std::string plain = plant.write("P-1.yaml", plain_request("P-1", "500, 2000"));
    const std::string worked =
        plant.write("P-2.yaml", plain_request("P-2", "500, 2000") +
                                    "extras: {outside-work: {order_price: 120, thousand_price: 4.5}}\n");
    CHECK(ask_at(plant.folder(), {"quote", worked}).exit_code == 1);
    plant.replace("plugins.yaml", "  - paper: {}", "  - paper: {}\n  - outside-work: {}");
    const Json before = request_of(plant, {"quote", plain, "--json"})["quotes"];
    const Json after = request_of(plant, {"quote", worked, "--json"})["quotes"];
    CHECK(after[0]["cost"].get<double>() == Approx(before[0]["cost"].get<double>() + 122.25).margin(1e-9));
    CHECK(after[1]["cost"].get<double>() == Approx(before[1]["cost"].get<double>() + 129).margin(1e-9));
}
