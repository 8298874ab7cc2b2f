// The short answer: what each quantity costs and brings, in so few lines that a person reads it to its end.
#include <catch2/catch.hpp>
#include <cmath>
#include <nlohmann/json.hpp>

#include "host/render/text.hpp"
#include "tests/system/face.hpp"
#include "tests/system/printed_sheet.hpp"
#include "tests/system/set_plant.hpp"

using namespace flutebook::fixture;
using Catch::Matchers::Contains;
using Json = nlohmann::ordered_json;

namespace {

// The printed answer, for a reader with so many columns.
Ended printed(const std::string& plant, const std::vector<std::string>& words, const std::string& columns = "") {
    Child child{{FLUTEBOOK_PROGRAM, "--plant", plant, "quote"}};
    child.words.insert(child.words.end(), words.begin(), words.end());
    if (!columns.empty()) child.variables = {{"COLUMNS", columns}};
    return run(child);
}

std::size_t widest_line(const std::string& text) {
    std::size_t result = 0;
    for (const std::string& line : lines_of(text)) result = std::max(result, flutebook::render::width_of(line));
    return result;
}

// The numbers of the rows of the table below this title.
std::vector<std::vector<double>> rows_below(const std::string& text, const std::string& title) {
    std::vector<std::vector<double>> result;
    bool is_inside = false;
    for (const std::string& line : lines_of(text)) {
        if (line == title) is_inside = true;
        if (line.empty()) is_inside = false;
        if (is_inside && numbers_in(line).size() > 2) result.push_back(numbers_in(line));
    }
    return result;
}

}  // namespace

TEST_CASE(
    "a request is answered by its ladder and its measures alone, and the sheets stand below only when asked for") {
    const std::string shown = quote_demo({demo_request("R-1001")}).output;
    CHECK(sheets_on(shown) == 0);
    CHECK(lines_of(shown).size() < 30);
    CHECK(rows_below(shown, "Price ladder, EUR").size() == 3);
    CHECK_THAT(shown, Contains("R-1001  Ashlar Tiles") && Contains("board B-140") &&
                          Contains("Measure: a box weighs") && Contains("C1 > FG1"));
    const Ended all = quote_demo({demo_request("R-1001")}, {"--sheet"});
    CHECK(sheets_on(all.output) == 3);
    CHECK(all.output.substr(0, shown.size() - 1) == shown.substr(0, shown.size() - 1));
}

TEST_CASE("a sheet is shown of the quantity that is named, wherever the option stands") {
    const std::string file = demo_request("R-1001");
    CHECK(sheets_on(printed(demo_plant(), {"--sheet", "1000", file}).output) == 1);
    CHECK_THAT(printed(demo_plant(), {file, "--sheet", "1000"}).output, Contains("1 000 boxes, the cheapest of"));
    CHECK(sheets_on(printed(demo_plant(), {"--sheet", file}).output) == 3);
    const Ended wrong = printed(demo_plant(), {file, "--sheet", "700"});
    CHECK(wrong.exit_code == 1);
    CHECK_THAT(wrong.errors, Contains("--sheet: no request asks for this quantity: found 700"));
    CHECK(printed(demo_plant(), {file, "--sheet", "0"}).exit_code == 2);
}

TEST_CASE("an order's value is its price by the thousand in whole coins, and its profit what the cost leaves of that") {
    const Ended ended = quote_demo(all_demo_requests(), {"--json"});
    std::size_t quotes = 0;
    const Json document = Json::parse(ended.output);
    for (const Json& request : document["requests"])
        for (const Json& quote : request["quotes"]) {
            if (quote.contains("refused")) continue;
            ++quotes;
            const double value = quote["order_value"], price = quote["price_per_thousand"];
            const double exact = price * quote["quantity"].get<double>() / 1000;
            CHECK(value == Approx(std::round(exact * 100) / 100).margin(1e-9));
            CHECK(quote["profit"].get<double>() == Approx(value - quote["cost"].get<double>()).margin(1e-9));
            CHECK(quote["profit_share"].get<double>() == Approx(quote["profit"].get<double>() / value));
        }
    CHECK(quotes > 20);
}

TEST_CASE("the ladder prints what the JSON says, and in every row order value less cost is profit") {
    const std::string text = quote_demo({demo_request("R-1001")}).output;
    const Json document = Json::parse(quote_demo({demo_request("R-1001")}, {"--json"}).output);
    const auto rows = rows_below(text, "Price ladder, EUR");
    REQUIRE(rows.size() == 3);
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const Json& quote = document["requests"][0]["quotes"][i];
        REQUIRE(rows[i].size() == 7);
        CHECK(rows[i][0] == quote["quantity"]);
        CHECK(rows[i][1] == quote["price_per_thousand"]);
        CHECK(rows[i][2] == quote["order_value"]);
        CHECK(rows[i][3] == Approx(quote["cost"].get<double>()).margin(0.005001));
        CHECK(std::llround(rows[i][2] * 100) - std::llround(rows[i][3] * 100) == std::llround(rows[i][4] * 100));
        CHECK(rows[i][5] == Approx(100 * quote["profit_share"].get<double>()).margin(0.05001));
        double loss = 0;
        for (const auto& [cause, kg] : quote["mass_kg"]["loss"].items()) loss += kg.get<double>();
        CHECK(rows[i][6] == Approx(100 * loss / quote["mass_kg"]["issued"].get<double>()).margin(0.05001));
    }
}

TEST_CASE("the answer fits 80 columns where COLUMNS says so, whatever is asked for, and a hundred elsewhere") {
    for (const std::string& file : all_demo_requests()) {
        CAPTURE(file);
        CHECK(widest_line(printed(demo_plant(), {file}, "80").output) <= 80);
        CHECK(widest_line(printed(demo_plant(), {file}).output) <= 100);
    }
    std::vector<std::string> all = all_demo_requests();
    CHECK(widest_line(printed(demo_plant(), all, "80").output) <= 80);
    CHECK(widest_line(printed(demo_plant(), all, "500").output) <= 100);
    SetPlant sets;
    CHECK(widest_line(printed(sets.folder(), {sets.write_request("S-1", "500, 20000")}, "80").output) <= 80);
}

TEST_CASE("many requests are one table, a line a quantity, and what cannot be made says so with its limits below") {
    std::size_t quantities = 0;
    const Json document = Json::parse(quote_demo(all_demo_requests(), {"--json"}).output);
    for (const Json& request : document["requests"]) quantities += request["quotes"].size();
    const Ended ended = quote_demo(all_demo_requests());
    CHECK(ended.exit_code == 1);
    CHECK(sheets_on(ended.output) == 0);
    CHECK(rows_below(ended.output, "Prices, EUR").size() == quantities - 1);
    CHECK_THAT(ended.output, Contains("cannot be made") && Contains("R-1009 at 100: ") && !Contains("Price ladder"));
    CHECK(ended.output.find(" all ") == std::string::npos);  // quantities of one request are choices
}

TEST_CASE("requests of one quantity each are added up as they are printed") {
    PlantCopy plant;
    std::vector<std::string> words;
    for (const std::string number : {"A-1", "A-2", "A-3"})
        words.push_back(plant.write(number + ".yaml", plain_request(number, number == "A-2" ? "777" : "1250")));
    const auto rows = rows_below(printed(plant.folder(), words).output, "Prices, EUR");
    REQUIRE(rows.size() == 4);
    for (std::size_t column = 1; column <= 3; ++column) {  // of the total, which has no quantity and no price
        long long sum = 0;
        for (std::size_t i = 0; i < 3; ++i) sum += std::llround(rows[i][column + 1] * 100);
        CHECK(std::llround(rows[3][column - 1] * 100) == sum);
    }
}

TEST_CASE("the number of a saved quote stands last, below one request and below a table of many") {
    PlantCopy plant;
    const std::string first = plant.write("A-1.yaml", plain_request("A-1", "500"));
    const std::string second = plant.write("A-2.yaml", plain_request("A-2", "500"));
    const Ended one = printed(plant.folder(), {first, "--save"});
    CHECK_THAT(one.output, Catch::Matchers::EndsWith("saved as Q000001\n\n"));
    const Ended many = printed(plant.folder(), {first, second, "--save"});
    CHECK_THAT(many.output, Catch::Matchers::EndsWith("A-1 saved as Q000001\nA-2 saved as Q000002\n"));
}
