// `quote --json`: the keys, their order and their sums, as scripts rely on them.
#include <fmt/format.h>

#include <catch2/catch.hpp>
#include <cmath>
#include <cstdlib>
#include <nlohmann/json.hpp>
#include <regex>

#include "tests/system/face.hpp"

using namespace flutebook::fixture;
using Json = nlohmann::ordered_json;

namespace {

const std::string& all_answers() {
    static const std::string text = quote_demo(all_demo_requests(), {"--json"}).output;
    return text;
}

// Every quote that could be made, of every demo request.
std::vector<Json> all_quotes() {
    std::vector<Json> result;
    const Json document = Json::parse(all_answers());
    for (const Json& request : document["requests"])
        for (const Json& quote : request["quotes"])
            if (!quote.contains("refused")) result.push_back(quote);
    return result;
}

std::vector<std::string> keys(const Json& object) {
    std::vector<std::string> result;
    for (const auto& member : object.items()) result.push_back(member.key());
    return result;
}

// Money as what it is: whole ten-thousandths.
long long counted(const Json& money) {
    return std::llround(money.get<double>() * 10000);
}

double kg(const Json& quote, const char* key) {
    return quote["mass_kg"][key].get<double>();
}

}  // namespace

TEST_CASE("the document names plant and currency, then the requests as they were asked") {
    const Json all = Json::parse(all_answers());
    CHECK(keys(all) == std::vector<std::string>{"answer", "answer_version", "plant", "currency", "currency_decimals",
                                                "units", "warnings", "requests"});
    CHECK(all["currency"] == "EUR");
    CHECK(all["requests"].size() == all_demo_requests().size());
    for (const Json& request : all["requests"])
        CHECK(keys(request) == std::vector<std::string>{"request", "quotes", "warnings", "page"});
    const Json turned = Json::parse(quote_demo({demo_request("R-1003"), demo_request("R-1001")}, {"--json"}).output);
    CHECK(turned["requests"][0]["request"] == "R-1003");
    CHECK(turned["requests"][1]["request"] == "R-1001");
}

TEST_CASE("a quote has its keys in their order, and more only behind them") {
    const std::vector<std::string> wanted = {"quantity",
                                             "corrugator",
                                             "route",
                                             "roll_width_mm",
                                             "outs",
                                             "trim_mm",
                                             "ups",
                                             "chop_mm",
                                             "slit_mm",
                                             "blank",
                                             "board_grammage",
                                             "web_length_m",
                                             "fed",
                                             "good",
                                             "mass_kg",
                                             "lines",
                                             "cost",
                                             "cost_per_thousand",
                                             "price_per_thousand",
                                             "contribution_per_thousand",
                                             "waste_cost",
                                             "recovery",
                                             "cost_per_m2",
                                             "cost_per_tonne",
                                             "nx",
                                             "ny",
                                             "web_area_m2",
                                             "waste_by_step",
                                             "candidates",
                                             "runners_up",
                                             "losses",
                                             "line_titles",
                                             "order_value",
                                             "profit",
                                             "profit_share",
                                             "price_rules",
                                             "not_in_price",
                                             "machine_hours",
                                             "per_run_cost",
                                             "price_less_cash_per_thousand",
                                             "break_even_quantity"};
    REQUIRE(all_quotes().size() > 20);
    for (const Json& quote : all_quotes()) {
        std::vector<std::string> of_this = wanted;
        if (quote.contains("bought_from")) of_this.push_back("bought_from");
        CHECK(keys(quote) == of_this);
        CHECK(keys(quote["blank"]) == std::vector<std::string>{"length_mm", "width_mm", "area_m2"});
        CHECK(keys(quote["mass_kg"]) == std::vector<std::string>{"issued", "adhesive", "product", "loss"});
        for (const Json& line : quote["lines"])
            CHECK(keys(line) == std::vector<std::string>{"plugin", "line", "step", "ply", "class", "behaviour",
                                                         "quantity", "unit", "rate", "amount"});
        for (const Json& missing : quote["not_in_price"])
            CHECK(keys(missing) ==
                  std::vector<std::string>{"plugin", "line", "setting", "amount", "title", "meaning", "colours"});
        CHECK(quote["machine_hours"].size() == quote["good"].size());
    }
}

TEST_CASE("the price less its cash costs, and where it breaks even, follow from the lines by behaviour") {
    for (const Json& quote : all_quotes()) {
        double per_unit = 0, per_run = 0;
        for (const Json& line : quote["lines"]) {
            const double amount = line["amount"];
            if (line["class"] == "recovery" || line["behaviour"] == "per-unit")
                per_unit += amount;
            else if (line["behaviour"] == "per-run")
                per_run += amount;
        }
        const double price = quote["price_per_thousand"], quantity = quote["quantity"];
        CHECK(quote["per_run_cost"].get<double>() == Approx(per_run).margin(1e-9));
        CHECK(quote["contribution_per_thousand"].get<double>() ==
              Approx(price - per_unit / quantity * 1000).margin(6e-5));
        CHECK(quote["price_less_cash_per_thousand"].get<double>() ==
              Approx(price - (per_unit + per_run) / quantity * 1000).margin(6e-5));
        const double least = quote["break_even_quantity"];
        const double each = price / 1000 - per_unit / quantity;
        CHECK(least * each >= per_run - 1e-6);
        CHECK((least == 1 || (least - 1) * each < per_run));
    }
}

TEST_CASE("fed and good stand by step, and nothing is fed to the corrugator") {
    for (const Json& quote : all_quotes()) {
        const std::size_t steps = quote["route"].size() + 1;
        REQUIRE(quote["fed"].size() == steps);
        REQUIRE(quote["good"].size() == steps);
        CHECK(quote["fed"][0].is_null());
        for (std::size_t k = 1; k < steps; ++k) CHECK(quote["fed"][k] >= quote["good"][k]);
        CHECK(quote["good"][steps - 1].get<double>() * quote["ups"].get<double>() >= quote["quantity"].get<double>());
    }
}

TEST_CASE("lines stand by step, name a ply only where they are of one, and are never nothing") {
    for (const Json& quote : all_quotes()) {
        std::size_t last_step = 0;
        std::size_t papers = 0;
        for (const Json& line : quote["lines"]) {
            CHECK(line["step"].get<std::size_t>() >= last_step);
            last_step = line["step"];
            CHECK(last_step <= quote["route"].size() + 1);
            CHECK(line["amount"] != 0);
            if (line["line"] == "paper" || line["line"] == "bought-board") {
                CHECK(line["step"] == 0);
                CHECK(line["ply"] == papers++);
            } else {
                CHECK(line["ply"].is_null());
            }
        }
        CHECK((quote.contains("bought_from") ? papers == 1 : papers == 2 || papers == 3 || papers == 5));
    }
}

TEST_CASE("the lines add up to the cost exactly, and the waste of the steps to the cost of waste") {
    for (const Json& quote : all_quotes()) {
        long long cost = 0;
        long long recovery = 0;
        for (const Json& line : quote["lines"]) {
            const double product = line["quantity"].get<double>() * line["rate"].get<double>();
            CHECK(std::abs(static_cast<double>(counted(line["amount"])) - product * 10000) < 0.51);
            cost += counted(line["amount"]);
            if (line["class"] == "recovery") recovery -= counted(line["amount"]);
        }
        CHECK(cost == counted(quote["cost"]));
        CHECK(recovery == counted(quote["recovery"]));
        long long waste = 0;
        for (const Json& step : quote["waste_by_step"]) waste += counted(step["cost"]);
        CHECK(waste == counted(quote["waste_cost"]));
    }
}

TEST_CASE("what was issued is in the boxes or lost under a cause") {
    for (const Json& quote : all_quotes()) {
        const double in = kg(quote, "issued") + kg(quote, "adhesive");
        double out = kg(quote, "product");
        for (const auto& loss : quote["mass_kg"]["loss"].items()) out += loss.value().get<double>();
        CHECK(std::abs(in - out) <= 1e-9 * in);
        double lost_by_step = 0;
        for (const Json& step : quote["waste_by_step"]) lost_by_step += step["loss_kg"].get<double>();
        CHECK(std::abs(in - kg(quote, "product") - lost_by_step) <= 1e-9 * in);
    }
}

TEST_CASE("the next best ways are listed cheapest first, with the true difference in cost") {
    for (const Json& quote : all_quotes()) {
        CHECK(quote["runners_up"].size() == std::min<std::size_t>(3, quote["candidates"].get<std::size_t>() - 1));
        long long last = counted(quote["cost"]);
        for (const Json& json : quote["runners_up"]) {
            CHECK(counted(json["cost"]) >= last);
            CHECK(counted(json["cost"]) - counted(quote["cost"]) == counted(json["dearer_by"]));
            last = counted(json["cost"]);
        }
    }
}

TEST_CASE("money has at most four places, and every number is the shortest that reads back as itself") {
    const std::string& text = all_answers();
    const std::regex number(R"re("([a-z0-9_-]+)": (-?[0-9][0-9.e+-]*))re");
    const std::regex money("cost.*|price_.*|contribution_.*|amount|dearer_by|recovery|waste_cost");
    std::size_t amounts = 0;
    for (std::sregex_iterator at(text.begin(), text.end(), number), end; at != end; ++at) {
        const std::string key = (*at)[1];
        const std::string digits = (*at)[2];
        if (fmt::format("{}", std::strtod(digits.c_str(), nullptr)) != digits) FAIL_CHECK(key << " is " << digits);
        if (!std::regex_match(key, money)) continue;
        ++amounts;
        const std::size_t point = digits.find('.');
        if (point != std::string::npos && digits.size() - point - 1 > 4) FAIL_CHECK(key << " is " << digits);
    }
    CHECK(amounts > 500);
}

TEST_CASE("a plant that is shown us units gives scripts the same numbers") {
    PlantCopy plant;
    plant.replace("plant.yaml", "units: metric", "units: us");
    Json us = Json::parse(ask_at(plant.folder(), {"quote", demo_request("R-1005"), "--json"}).output);
    Json metric = Json::parse(quote_demo({demo_request("R-1005")}, {"--json"}).output);
    for (Json* all : {&us, &metric})
        for (Json& quote : (*all)["requests"][0]["quotes"])
            for (Json& json : quote["runners_up"]) json.erase("candidate");  // a name for people
    CHECK(us["units"] == "us");
    CHECK(metric["units"] == "metric");
    for (Json* all : {&us, &metric}) all->erase("units");  // which those names are in
    CHECK(us == metric);
}

TEST_CASE("the order of the plant's list of models changes no byte") {
    PlantCopy plant;
    plant.replace("plugins.yaml", "  - run: {}\n", "");
    plant.replace("plugins.yaml", "  - setup: {}\n", "  - setup: {}\n  - run: {}\n");
    plant.replace("plugins.yaml", "  - running: {}\n", "");
    plant.replace("plugins.yaml", "plugins:\n", "plugins:\n  - running: {}\n");
    const auto files = all_demo_requests();
    std::vector<std::string> words = {"quote", "--json"};
    words.insert(words.end(), files.begin(), files.end());
    CHECK(ask_at(plant.folder(), words).output == all_answers());
}
