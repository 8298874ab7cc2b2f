// --explain knows every figure of a quote, by the key that the answer's document has for it.
#include <fmt/format.h>

#include <algorithm>
#include <catch2/catch.hpp>
#include <map>
#include <nlohmann/json.hpp>

#include "tests/system/face.hpp"

using namespace flutebook::fixture;
using Catch::Matchers::Contains;
using Json = nlohmann::ordered_json;

namespace {

// A key of the document, and its value: a number, or those of an array.
struct KeyedFigure {
    std::string key;
    std::vector<double> values;
    bool is_by_step;
};

void add(std::vector<KeyedFigure>& figures, const std::string& key, const Json& value) {
    if (value.is_number()) {
        const auto same =
            std::find_if(figures.begin(), figures.end(), [&](const auto& known) { return known.key == key; });
        if (same == figures.end())
            figures.push_back({key, {value.get<double>()}, false});
        else
            same->values.push_back(value);
    } else if (value.is_object()) {
        for (const auto& [name, inner] : value.items()) add(figures, key.empty() ? name : key + "." + name, inner);
    } else if (value.is_array()) {
        for (const Json& item : value) add(figures, key, item);
        for (KeyedFigure& figure : figures)
            if (figure.key.rfind(key, 0) == 0) figure.is_by_step = true;
    }
}

// All numbers of a quote but those of other ways, those that stand in it twice, and rules, which say where they stand.
std::vector<KeyedFigure> figures_of(Json quote) {
    for (const char* other : {"candidates", "runners_up", "not_in_price", "losses", "line_titles", "price_rules"})
        quote.erase(other);
    Json lines = std::move(quote["lines"]);
    quote.erase("lines");
    for (Json& step : quote["waste_by_step"]) step.erase("step");
    std::vector<KeyedFigure> result;
    add(result, "", quote);
    for (const Json& line : lines) add(result, line["line"], line["amount"]);
    return result;
}

// Of each request its quote at the first quantity.
std::vector<Json> quotes_of(const std::vector<std::string>& numbers, const std::vector<std::string>& more = {}) {
    std::vector<std::string> files, options = {"--json"};
    for (const std::string& number : numbers) files.push_back(demo_request(number));
    options.insert(options.end(), more.begin(), more.end());
    const Ended ended = quote_demo(files, options);
    CAPTURE(ended.errors);
    REQUIRE(ended.exit_code == 0);
    Json document = Json::parse(ended.output);
    std::vector<Json> result;
    for (Json& request : document["requests"]) result.push_back(std::move(request["quotes"][0]));
    REQUIRE(result.size() == numbers.size());
    return result;
}

Json quote_of(const std::string& number, const std::vector<std::string>& more = {}) {
    return quotes_of({number}, more).front();
}

double in_unit_of(const std::string& key, double value) {
    return key.size() > 3 && key.compare(key.size() - 3, 3, "_mm") == 0 ? value * 1000 : value;
}

void check_explained(const std::string& number, const Json& quote, const KeyedFigure& figure) {
    CAPTURE(number, figure.key);
    std::vector<double> told;
    double sum = 0, wanted = 0;
    for (const Json& trail : quote["explain"]) {
        told.push_back(in_unit_of(figure.key, trail["figures"][0]["value"]));
        sum += told.back();
        const Json& first = trail["figures"][0];
        CHECK(first["meaning"] != "");
        CHECK((told.back() == 0 || first["kind"] == "fact" || !first["inputs"].empty()));
    }
    for (const double value : figure.values) {
        wanted += value;
        const bool is_there =
            std::any_of(told.begin(), told.end(), [&](double other) { return other == Approx(value).epsilon(1e-9); });
        if (figure.is_by_step) CHECK((is_there || value == 0));
    }
    if (!figure.is_by_step) CHECK(sum == Approx(wanted).epsilon(1e-9).margin(1e-9));
}

const Json* figure_in(const Json& quote, const std::string& name) {
    for (const Json& trail : quote["explain"])
        for (const Json& figure : trail["figures"])
            if (figure["name"] == name) return &figure;
    return nullptr;
}

bool has_place_in(const Json& figure, const std::string& file) {
    return std::any_of(figure["places"].begin(), figure["places"].end(), [&](const Json& place) {
        return place.get<std::string>().find(file + ":") != std::string::npos;
    });
}

}  // namespace

TEST_CASE("every figure of a quote is explained, by the key that the document has for it") {
    const std::vector<std::string> numbers = {"R-1001", "R-1004", "R-1007"};
    const std::vector<Json> quotes = quotes_of(numbers);
    std::map<std::string, std::map<std::string, KeyedFigure>>
        by_key;  // each key's figures, by the requests that have it
    for (std::size_t i = 0; i < numbers.size(); ++i) {
        const std::vector<KeyedFigure> figures = figures_of(quotes[i]);
        CHECK(figures.size() > 45);
        for (const KeyedFigure& figure : figures) by_key[figure.key].emplace(numbers[i], figure);
    }
    for (const auto& [key, figures] : by_key) {
        std::vector<std::string> asked;
        for (const auto& [number, figure] : figures) asked.push_back(number);
        const std::vector<Json> explained = quotes_of(asked, {"--explain", key});
        for (std::size_t i = 0; i < asked.size(); ++i) check_explained(asked[i], explained[i], figures.at(asked[i]));
    }
}

TEST_CASE("a price is walked down through its formulas to the lines and to the margin of the request") {
    const Json quote = quote_of("R-1001", {"--explain", "price"});
    REQUIRE(quote["explain"].size() == 1);
    for (const char* name : {"price", "cost_per_thousand", "order.margin", "cost", "paper", "ply.price"}) {
        CAPTURE(name);
        CHECK(figure_in(quote, name) != nullptr);
    }
    CHECK((*figure_in(quote, "price"))["value"] == quote["price_per_thousand"]);
    CHECK(has_place_in(*figure_in(quote, "order.margin"), "R-1001-everyday-box.yaml"));
}

TEST_CASE("a figure is explained at one quantity alone where one is named") {
    const Ended ended = quote_demo({demo_request("R-1001")}, {"--explain", "price@1000"});
    CHECK(ended.exit_code == 0);
    CHECK_THAT(ended.output, Contains("Behind `price`, 1 000 boxes") && !Contains("Behind `price`, 500 boxes"));
    const Json document =
        Json::parse(quote_demo({demo_request("R-1001")}, {"--json", "--explain", "price@1000"}).output);
    const Json& quotes = document["requests"][0]["quotes"];
    CHECK(quotes[0]["explain"].empty());
    CHECK(quotes[1]["explain"].size() == 1);
    const Ended other = quote_demo({demo_request("R-1001")}, {"--explain", "price@700"});
    CHECK(other.exit_code == 1);
    CHECK_THAT(other.errors, Contains("--explain: request R-1001 asks for no such quantity: found '700' behind @; name "
                                      "one of 500, 1000, 5000"));
}

TEST_CASE("facts that are made of several files name the places in all of them") {
    const Json caliper = quote_of("R-1001", {"--explain", "board.caliper"});
    REQUIRE(caliper["explain"].size() == 1);
    for (const char* file : {"boards.yaml", "flutes.yaml", "papers.yaml"})
        CHECK(has_place_in(caliper["explain"][0]["figures"][0], file));
    const Json colours = quote_of("R-1001", {"--explain", "step.colours"});
    const Json& printing = colours["explain"][1]["figures"][0];
    CHECK(printing["value"] == 2);
    CHECK(has_place_in(printing, "R-1001-everyday-box.yaml"));
    CHECK(has_place_in(printing, "machines.yaml"));
    CHECK(colours["explain"][0]["figures"][0]["places"].empty());
}

TEST_CASE("choices are shown by their names") {
    CHECK(quote_of("R-1001", {"--explain", "step.kind"})["explain"][1]["figures"][0]["choice"] == "folder-gluer");
    CHECK(quote_of("R-1001", {"--explain", "ply.kind"})["explain"][1]["figures"][0]["choice"] == "medium");
    CHECK(quote_of("R-1010", {"--explain", "consumables.joint"})["explain"][0]["figures"][0]["choice"] == "stitch");
    CHECK_THAT(quote_demo({demo_request("R-1010")}, {"--explain", "consumables.joint"}).output,
               Contains("consumables.joint = stitch"));
}

TEST_CASE("the price of a set is refused with what each of its pieces has") {
    PlantCopy plant;
    std::string text = plain_request("R-1", "500");
    text.replace(text.find("\"0201\""), 6, "\"0301\"");
    const Ended ended = ask_at(plant.folder(), {"quote", plant.write("r.yaml", text), "--explain", "price"});
    CHECK(ended.exit_code == 1);
    CHECK_THAT(ended.errors, Contains("ask for `cost`"));
}

TEST_CASE("what was explained of a saved quote is shown again as it was") {
    const PlantCopy plant;
    const std::string file = demo_request("R-1001");
    const Ended saved = ask_at(plant.folder(), {"quote", file, "--save", "--explain", "cost@500"});
    REQUIRE(saved.exit_code == 0);
    const Ended shown = ask_at(plant.folder(), {"quote", "show", "Q000001"});
    CHECK(shown.exit_code == 0);
    const auto behind = [](const std::string& text) { return text.substr(text.find("Behind `cost`"), 2000); };
    CHECK_THAT(saved.output, Contains("Behind `cost`, 500 boxes"));
    CHECK(behind(saved.output) == behind(shown.output));
}
