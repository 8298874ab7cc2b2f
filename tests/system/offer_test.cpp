// The customer's sheet: what it says, and that it says nothing of what the house keeps to itself.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <regex>
#include <set>
#include <sstream>

#include "tests/system/face.hpp"
#include "tests/system/set_plant.hpp"

using namespace flutebook::fixture;
using Catch::Matchers::Contains;
using Json = nlohmann::ordered_json;
namespace fs = std::filesystem;

namespace {

std::string bytes_of(const std::string& file) {
    std::ostringstream text;
    text << std::ifstream(file, std::ios::binary).rdbuf();
    return text.str();
}

// The offer of a request; the test fails where there is none.
std::string offer_of(const std::string& plant, const std::string& request) {
    const std::string file = plant + "/offer.html";
    const Ended ended = ask_at(plant, {"quote", request, "--offer", file, "--replace"});
    INFO(ended.errors);
    REQUIRE(fs::exists(file));
    return bytes_of(file);
}

// Every number of a text as its value, thousands joined: "2 102.05" and "2102,05" are 2102.05.
std::set<double> figures_in(const std::string& text) {
    static const std::regex number(R"(\d{1,3}(?: \d{3})+(?:[.,]\d+)?|\d+(?:[.,]\d+)?)");
    std::set<double> result;
    for (std::sregex_iterator found(text.begin(), text.end(), number), end; found != end; ++found) {
        std::string digits = std::regex_replace(found->str(), std::regex(" "), "");
        std::replace(digits.begin(), digits.end(), ',', '.');
        result.insert(std::strtod(digits.c_str(), nullptr));
    }
    return result;
}

// Without what is the same for every request, and without the pictures, whose points follow from the box alone: both
// have tests of their own.
std::string without_style_and_pictures(const std::string& html) {
    std::string text = html;
    for (const auto& [open, close] :
         std::vector<std::pair<std::string, std::string>>{{"<style>", "</style>"}, {"<svg", "</svg>"}, {"<meta", ">"}})
        for (auto at = text.find(open); at != std::string::npos; at = text.find(open, at))
            text.erase(at, text.find(close, at) + close.size() - at);
    return text;
}

// What a customer may know of the house's document: prices, what is invoiced apart, the order.
std::set<double> figures_for_customers(const Json& request) {
    std::set<double> known;
    for (const Json& quote : request["quotes"]) {
        known.insert(quote["quantity"].get<double>());
        if (quote.contains("refused")) continue;
        known.insert({quote["price_per_thousand"].get<double>(), quote["order_value"].get<double>()});
        if (!quote.contains("mass_kg")) continue;
        // What a box weighs, as it is shown.
        const double kg = quote["mass_kg"]["product"].get<double>() / quote["quantity"].get<double>();
        known.insert({std::strtod(fmt::format("{:.4g}", kg).c_str(), nullptr), std::round(kg * 1e4) / 1e4});
        for (const Json& item : quote["not_in_price"])
            if (!item["amount"].is_null()) known.insert(std::round(item["amount"].get<double>() * 100) / 100);
    }
    const Json& page = request["page"];
    for (const char* sizes : {"inside_mm", "outside_mm"})
        if (page.contains(sizes) && page[sizes].is_array())
            for (const Json& length : page[sizes]) known.insert(length.get<double>());
    if (page.contains("colours")) known.insert(page["colours"].get<double>());
    return known;
}

// A file of words in which each word is "w", but for what it is filled with.
std::string wordless() {
    std::string text = bytes_of(FLUTEBOOK_SOURCE_DIR "/config/offer-words.yaml");
    std::istringstream lines(text);
    std::string result, line;
    while (std::getline(lines, line)) {
        line = std::regex_replace(line, std::regex(" *#.*$"), "");
        std::smatch word;
        if (std::regex_match(line, word, std::regex(R"((\s*[\w.]+: )(.+))")) && line.rfind("language", 0) != 0) {
            std::string filled;
            const std::string whole = word[2];
            static const std::regex part(R"(\{\w+\})");
            for (std::sregex_iterator found(whole.begin(), whole.end(), part), end; found != end; ++found)
                filled += " " + found->str();
            line = word[1].str() + "\"w" + filled + "\"";
        }
        result += line + "\n";
    }
    return result;
}

std::set<std::string> words_in(const std::string& text) {
    static const std::regex word(R"([A-Za-z_][\w.]*)");
    std::set<std::string> result;
    for (std::sregex_iterator found(text.begin(), text.end(), word), end; found != end; ++found)
        result.insert(found->str());
    return result;
}

// As a customer's eye skips them: prices, so that offers can be compared but for them.
std::string without_prices(std::string html) {
    return std::regex_replace(html, std::regex(R"(<td class="num[^"]*">[^<]*</td>)"), "<td></td>");
}

}  // namespace

TEST_CASE("an offer holds no figure of the house's sheet that is not a price, for every demo request") {
    const PlantCopy plant;
    std::size_t searched = 0;
    for (const std::string& request : all_demo_requests()) {
        CAPTURE(request);
        const Ended sheet = ask_at(plant.folder(), {"quote", request, "--sheet"});
        if (sheet.exit_code != 0) continue;
        const Json document = Json::parse(ask_at(plant.folder(), {"quote", request, "--json"}).output)["requests"][0];
        const std::set<double> allowed = figures_for_customers(document);
        const auto without_number = [&](const std::string& text) {
            return std::regex_replace(text, std::regex(document["request"].get<std::string>()), "");
        };
        const std::string html = without_number(without_style_and_pictures(offer_of(plant.folder(), request)));
        const std::set<double> shown = figures_in(html);
        // Whole numbers below a thousand are days, grammages and marks of the page; the test below holds them.
        for (const double figure : figures_in(without_number(sheet.output))) {
            if (allowed.count(figure) == 1 || (figure < 1000 && figure == std::floor(figure))) continue;
            ++searched;
            CAPTURE(figure);
            const bool is_a_year = figure >= 2020 && figure <= 2030 && figure == std::floor(figure);
            CHECK((is_a_year || shown.count(figure) == 0));
        }
        for (const Json& quote : document["quotes"])
            for (const Json& line : quote["lines"]) {
                const double amount = line["amount"].get<double>();
                if (amount != std::floor(amount) && allowed.count(std::abs(amount)) == 0)
                    CHECK(shown.count(std::abs(amount)) == 0);
            }
    }
    CHECK(searched > 2000);
}

TEST_CASE("an offer is the same, pictures and all, whatever the order costs and the house keeps, but for its prices") {
    PlantCopy plant;
    const std::string request = bytes_of(demo_request("R-1001"));
    const std::string one = offer_of(plant.folder(), plant.write("R-1.yaml", request));
    const std::string other_margin = std::regex_replace(request, std::regex("margin: 0.18"), "margin: 0.31");
    const std::string other = offer_of(plant.folder(), plant.write("R-1.yaml", other_margin));
    CHECK(other != one);
    CHECK(without_prices(other) == without_prices(one));
    plant.replace("plugins.yaml", "starch_price", "starch_price: 9 EUR/kg #");
    const std::string dearer = offer_of(plant.folder(), plant.write("R-1.yaml", request));
    CHECK(dearer != one);
    CHECK(without_prices(dearer) == without_prices(one));
}

TEST_CASE("no name of a model, a line, a setting, a machine, a board or a paper stands anywhere in an offer") {
    PlantCopy plant;
    plant.write("offer.yaml", wordless());
    for (const char* number : {"R-1001", "R-1004", "R-1007", "R-1008", "R-1010"}) {
        CAPTURE(number);
        const Json document = Json::parse(quote_demo({demo_request(number)}, {"--json"}).output);
        std::set<std::string> secret = {"cost",  "costs",    "margin",   "waste", "profit",     "contribution",
                                        "loss",  "recovery", "surplus",  "trim",  "corrugator", "roll",
                                        "scrap", "starch",   "overhead", "setup", "coverage"};
        for (const Json& quote : document["requests"][0]["quotes"]) {
            secret.insert(quote["corrugator"].get<std::string>());
            for (const Json& machine : quote["route"]) secret.insert(machine.get<std::string>());
            for (const Json& line : quote["lines"])
                secret.insert({line["plugin"].get<std::string>(), line["line"].get<std::string>()});
            for (const Json& item : quote["not_in_price"]) {
                secret.insert({item["plugin"].get<std::string>(), item["line"].get<std::string>()});
                if (!item["setting"].is_null()) secret.insert(item["setting"].get<std::string>());
            }
            for (const Json& title : quote["line_titles"])
                if (title["paper"].is_string()) secret.insert(title["paper"].get<std::string>());
        }
        const std::string html = offer_of(plant.folder(), demo_request(number));
        const std::string own = html.substr(0, html.find("<style>")) + html.substr(html.find("</style>"));
        CHECK(own.find(document["requests"][0]["page"]["board"].get<std::string>()) == std::string::npos);
        const std::set<std::string> words = words_in(own);
        for (const std::string& name : secret) {
            CAPTURE(name);
            CHECK(words.count(name) == 0);
        }
        // The style sheet speaks of its own margins and of the ink of letters, and is the same for every request.
        std::set<std::string> style =
            words_in(html.substr(html.find("<style>"), html.find("</style>") - html.find("<style>")));
        style.erase("margin");
        style.erase("ink");
        for (const std::string& name : secret) CHECK(style.count(name) == 0);
    }
}

TEST_CASE("an offer says who, what, for how many, at what price, what tools are invoiced and what is not included") {
    PlantCopy plant;
    const std::string html = offer_of(plant.folder(), demo_request("R-1001"));
    CHECK_THAT(html, Contains("<h1>Offer R-1001</h1><span>Brackenholt Board</span>") && Contains("Ashlar Tiles") &&
                         Contains("400 x 300 x 250 mm") && Contains("B flute, papers 135 / 127 / 125 g/m2") &&
                         Contains("2 colours"));
    const Json quotes = Json::parse(quote_demo({demo_request("R-1001")}, {"--json"}).output)["requests"][0]["quotes"];
    for (const Json& quote : quotes) {
        const auto coins = [](double value) {
            std::string text = fmt::format("{:.2f}", value);
            if (value >= 1000) text.insert(text.size() - 6, " ");
            return text;
        };
        CHECK_THAT(html, Contains(">" + coins(quote["price_per_thousand"].get<double>()) + "</td>") &&
                             Contains(">" + coins(quote["order_value"].get<double>()) + "</td>"));
    }
    CHECK_THAT(html, Contains("<p>Print plates: 901.56 EUR, invoiced once</p>"));
    CHECK_THAT(html, Contains("<b>The box, folded</b>") && Contains("<b>The box, half open</b>"));
    CHECK_THAT(html, Contains("Brackenholt Board, 4 Flume Lane, Brackenholt"));
    CHECK(html.find("Not included") == std::string::npos);
    const std::string bare = plain_request("N-1", "500, 5000") + "colours: 2\nroute: [FG1]\n";
    const std::string without = offer_of(plant.folder(), plant.write("N-1.yaml", bare));
    CHECK_THAT(without, Contains("<h2>Not included</h2>\n<p>carriage to your works</p>\n<p>printing ink</p>"));
}

TEST_CASE("an offer says how many boxes stand on a pallet where the plant charges for pallets") {
    PlantCopy plant;
    const std::string html = offer_of(plant.folder(), demo_request("R-1001"));
    // 500 of 0.7904 m2 and 2.87 mm fill 0.79 of a pallet of 1.44 m3, 5000 of them 7.9: eight of 625.
    CHECK_THAT(html, Contains("at 500, 1 000: up to 500 on a pallet") && Contains("at 5 000: up to 625 on a pallet"));
    plant.replace("plugins.yaml", "pallet_price: 7.50", "pallet_price: 0");
    CHECK_THAT(offer_of(plant.folder(), demo_request("R-1001")), !Contains("on a pallet"));
}

TEST_CASE("an offer names the tools that the price includes, without their amount") {
    PlantCopy plant;
    std::string request = bytes_of(demo_request("R-1001"));
    request += "  tooling: {plate_boxes: 20000}\n";
    const std::string html = offer_of(plant.folder(), plant.write("R-1.yaml", request));
    CHECK_THAT(html, Contains("<p>Print plates: in the price</p>") && !Contains("invoiced once"));
}

TEST_CASE("an offer of a set prices sets, and draws each piece under the plant's name for it") {
    SetPlant plant;
    const std::string request = plant.write_request("S-1", "200, 1000");
    const std::string file = plant.folder() + "/offer.html";
    const Ended nameless = plant.ask({"quote", request, "--offer", file});
    CHECK(nameless.exit_code == 3);
    CHECK_THAT(nameless.errors, Contains("drawing.pieces.") && Contains("a word is missing"));
    CHECK_FALSE(fs::exists(file));
    std::string words = bytes_of(FLUTEBOOK_SOURCE_DIR "/config/offer-words.yaml");
    words.replace(words.find("    lid: Lid\n"), 13, "    lid: Lid\n    tray: Tray\n    pad: Pad\n");
    plant.write("offer.yaml", words);
    const std::string html = offer_of(plant.folder(), request);
    CHECK_THAT(html, Contains(">sets</th>") && Contains("Weight of a set") && Contains("<b>Pad, flat</b>") &&
                         Contains("<b>Tray, folded</b>"));
    for (const SetPlant::Json& quote : plant.document({"quote", request, "--json"})["requests"][0]["quotes"])
        CHECK(figures_in(without_style_and_pictures(html)).count(quote["price_per_thousand"].get<double>()) == 1);
}

TEST_CASE("a word that a plant's offer.yaml lacks is reported with its key, before anything is written") {
    PlantCopy plant;
    const std::string words = bytes_of(FLUTEBOOK_SOURCE_DIR "/config/offer-words.yaml");
    const std::string file = plant.folder() + "/offer.html";
    const auto told = [&](const std::string& from, const std::string& to) {
        plant.write("offer.yaml", std::regex_replace(words, std::regex(from), to));
        const Ended ended = ask_at(plant.folder(), {"quote", demo_request("R-1001"), "--offer", file});
        CHECK(ended.exit_code == 3);
        CHECK_FALSE(fs::exists(file));
        return ended.errors;
    };
    CHECK_THAT(told("  order_value: .*\n", ""), Contains("offer.yaml:") && Contains("prices.order_value: missing"));
    CHECK_THAT(told("order_value: .*\n", "order_value: \"\"\n"), Contains("prices.order_value"));
    CHECK_THAT(told("\\{tool\\}: \\{amount\\} \\{currency\\}", "{tool} {currency}"),
               Contains("tools.apart: a part is missing") && Contains("`{amount}`"));
    CHECK_THAT(told("  order_value:", "  order_values:"), Contains("prices.order_values"));
    CHECK_THAT(told("    tooling.plates: Print plates\n", ""),
               Contains("tools.lines.tooling.plates: a word is missing"));
}

TEST_CASE("an offer leaves the house in the plant's own words and language") {
    PlantCopy plant;
    std::string words = bytes_of(FLUTEBOOK_SOURCE_DIR "/config/offer-words.yaml");
    words = std::regex_replace(words, std::regex("language: en"), "language: de");
    words = std::regex_replace(words, std::regex("Offer \\{number\\}"), "Angebot {number}");
    plant.write("offer.yaml", words);
    CHECK_THAT(offer_of(plant.folder(), demo_request("R-1001")),
               Contains("<html lang=\"de\">") && Contains("<title>Angebot R-1001</title>"));
}

TEST_CASE("an offer is printed on the paper that the plant's units or its own word say") {
    PlantCopy plant;
    CHECK_THAT(offer_of(plant.folder(), demo_request("R-1001")), Contains("@page { size: A4; }"));
    plant.replace("plant.yaml", "address:", "paper: letter\naddress:");
    CHECK_THAT(offer_of(plant.folder(), demo_request("R-1001")), Contains("@page { size: letter; }"));
    plant.replace("plant.yaml", "paper: letter\n", "");
    plant.replace("plant.yaml", "units: metric", "units: us");
    CHECK_THAT(offer_of(plant.folder(), demo_request("R-1001")), Contains("@page { size: letter; }"));
}

TEST_CASE("an offer says that a quantity without a price is not offered; without any price nothing is written") {
    PlantCopy plant;
    const std::string file = plant.folder() + "/offer.html";
    const Ended ended = ask_at(plant.folder(), {"quote", demo_request("R-1009"), "--offer", file});
    CHECK(ended.exit_code == 1);
    CHECK_THAT(ended.errors, Contains("--offer: nothing to offer: found no quantity with a price"));
    CHECK_FALSE(fs::exists(file));
}

TEST_CASE("a saved quote's offer is the one that was made when it was saved, whatever the plant's files say today") {
    PlantCopy plant;
    const std::string then = plant.folder() + "/then.html", now = plant.folder() + "/now.html";
    REQUIRE(ask_at(plant.folder(), {"quote", demo_request("R-1001"), "--save", "--offer", then}).exit_code == 0);
    plant.replace("plant.yaml", "4 Flume Lane", "9 Other Street");
    plant.replace("plugins.yaml", "starch_price", "starch_price: 9 EUR/kg #");
    const Ended shown = ask_at(plant.folder(), {"quote", "show", "Q000001", "--offer", now});
    INFO(shown.errors);
    REQUIRE(shown.exit_code == 0);
    CHECK(bytes_of(now) == bytes_of(then));
    CHECK_THAT(bytes_of(now), Contains("<h1>Offer Q000001</h1>") && Contains("4 Flume Lane"));
    CHECK(ask_at(plant.folder(), {"quote", "show", "Q000001", "--offer", now}).exit_code == 1);
}

TEST_CASE("offers of several requests stand in one file, the same bytes each time") {
    const PlantCopy plant;
    const std::string file = plant.folder() + "/offer.html";
    const std::vector<std::string> words = {"quote",    demo_request("R-1001"), demo_request("R-1007"), "--offer", file,
                                            "--replace"};
    REQUIRE(ask_at(plant.folder(), words).exit_code == 0);
    const std::string first = bytes_of(file);
    CHECK_THAT(first, Contains("<h1>Offer R-1001</h1>") && Contains("<h1>Offer R-1007</h1>"));
    REQUIRE(ask_at(plant.folder(), words).exit_code == 0);
    CHECK(bytes_of(file) == first);
}

TEST_CASE("an offer states the terms that the plant's rules and the request give") {
    PlantCopy plant;
    plant.replace("plant.yaml", "\ncurrency:",
                  "\npricing:\n  valid_days: 30\n  tolerance: {under: 0.05, over: 0.1}\n"
                  "  terms: {delivery: free to your gate, payment: within 14 days}\ncurrency:");
    const std::string file = plant.folder() + "/offer.html";
    const Ended ended = ask_at(plant.folder(), {"quote", demo_request("R-1001"), "--offer", file});
    INFO(ended.errors);
    REQUIRE(ended.exit_code == 0);
    std::ostringstream html;
    html << std::ifstream(file).rdbuf();
    CHECK_THAT(html.str(), Contains("free to your gate") && Contains("within 14 days"));
    CHECK_THAT(html.str(), Contains("2026-11-14"));  // 30 days from 2026-10-15
    CHECK_THAT(html.str(), Contains("10 %"));
}

TEST_CASE("an order that is called off in several deliveries says so on its offer, saved or not") {
    PlantCopy plant;
    plant.replace("plant.yaml", "\ncurrency:", "\npricing:\n  terms: {delivery: free to your gate}\ncurrency:");
    const auto calling_off = [&](const std::string& deliveries) {
        return plant.write("R-1.yaml", std::regex_replace(bytes_of(demo_request("R-1001")), std::regex("distance: 60"),
                                                          "distance: 60, deliveries: " + deliveries));
    };
    CHECK_THAT(offer_of(plant.folder(), calling_off("3")),
               Contains("free to your gate") && Contains("called off in 3 deliveries"));
    CHECK_THAT(offer_of(plant.folder(), calling_off("1")), Contains("free to your gate") && !Contains("called off"));
    REQUIRE(ask_at(plant.folder(), {"quote", calling_off("4"), "--save"}).exit_code == 0);
    const std::string file = plant.folder() + "/saved.html";
    REQUIRE(ask_at(plant.folder(), {"quote", "show", "Q000001", "--offer", file}).exit_code == 0);
    CHECK_THAT(bytes_of(file), Contains("called off in 4 deliveries"));
}

TEST_CASE("work that others do and the price leaves out is told on an offer in words of the installed file") {
    PlantCopy plant;
    plant.replace("plugins.yaml", "  - setup: {}\n", "  - setup: {}\n  - outside-work: {}\n");
    CHECK_THAT(offer_of(plant.folder(), demo_request("R-1001")), Contains("<p>work done by others</p>"));
}
