// Nothing that the house knows of a quote leaves it in an offer: every number of the answer's document is searched for
// in the whole file, its title, its metadata and its pictures among it, in each form in which it might be shown.
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
using Json = nlohmann::ordered_json;

namespace {

std::string text_of_file(const std::string& file) {
    std::ostringstream text;
    text << std::ifstream(file, std::ios::binary).rdbuf();
    return text.str();
}

// A number that nobody meets by chance: in ten-thousandths, with as many digits as are told apart from another.
using Figure = long long;
using Figures = std::set<Figure>;

Figure figure_of(double value) {
    return std::llround(std::abs(value) * 10000);
}

int digits_of(Figure figure) {
    while (figure != 0 && figure % 10 == 0) figure /= 10;
    return static_cast<int>(std::to_string(figure).size());
}

void add_forms(Figures& figures, double value, int least_digits) {
    if (!std::isfinite(value) || std::abs(value) > 1e9) return;
    for (const double shown : {value, value * 100})
        for (const double grain : {1.0, 10.0, 100.0, 1000.0, 10000.0}) {
            const Figure figure = figure_of(std::round(shown * grain) / grain);
            if (digits_of(figure) >= least_digits) figures.insert(figure);
        }
}

// Of every leaf of a document.
void add_numbers(Figures& figures, const Json& tree, int least_digits) {
    if (tree.is_number()) add_forms(figures, tree.get<double>(), least_digits);
    if (tree.is_structured())
        for (const Json& child : tree) add_numbers(figures, child, least_digits);
}

// Whatever a reader may take for a number: thousands joined or parted, a point or a comma.
Figures figures_shown(const std::string& text) {
    static const std::regex number(R"(\d{1,3}(?: \d{3})+(?:[.,]\d+)?|\d+(?:[.,]\d+)?)");
    Figures result;
    for (std::sregex_iterator found(text.begin(), text.end(), number), end; found != end; ++found) {
        std::string digits = std::regex_replace(found->str(), std::regex(" "), "");
        std::replace(digits.begin(), digits.end(), ',', '.');
        const double value = std::strtod(digits.c_str(), nullptr);
        if (value < 1e9) result.insert(figure_of(value));
    }
    return result;
}

// What a customer may know: the order, prices, what is invoiced apart, the box and its weight.
Figures known_to_customers(const Json& request) {
    constexpr int any = 1;
    Figures known;
    for (const Json& quote : request["quotes"]) {
        if (quote.contains("refused")) continue;
        for (const char* key : {"quantity", "price_per_thousand", "order_value"}) add_numbers(known, quote[key], any);
        for (const Json& item : quote["not_in_price"]) add_numbers(known, item["amount"], any);
        if (quote.contains("mass_kg"))
            add_forms(known, quote["mass_kg"]["product"].get<double>() / quote["quantity"].get<double>(), any);
    }
    for (const char* key : {"inside_mm", "outside_mm", "colours"})
        if (request["page"].contains(key)) add_numbers(known, request["page"][key], any);
    return known;
}

std::string without(std::string text, const std::string& open, const std::string& close) {
    for (auto at = text.find(open); at != std::string::npos; at = text.find(open, at))
        text.erase(at, text.find(close, at) + close.size() - at);
    return text;
}

// How many figures were searched for; each that the offer shows fails.
std::size_t secrets_sought(const std::string& plant, const std::string& request, const std::string& number) {
    const std::string file = plant + "/offer.html";
    const Ended offered = ask_at(plant, {"quote", request, "--offer", file, "--replace"});
    if (offered.exit_code == 1) return 0;  // nothing to offer
    INFO(offered.errors);
    REQUIRE(offered.exit_code == 0);
    const std::string document = ask_at(plant, {"quote", request, "--json"}).output;
    const Json answer = Json::parse(document)["requests"][0];
    const Figures known = known_to_customers(answer);
    // The style sheet is the same for every request.
    std::string html = without(text_of_file(file), "<style>", "</style>");
    html = std::regex_replace(html, std::regex(number), "");
    std::size_t searched = 0;
    const auto expect_none = [&](const std::string& text, int least_digits) {
        Figures secret;
        add_numbers(secret, answer, least_digits);
        const Figures shown = figures_shown(text);
        for (const Figure figure : secret) {
            if (known.count(figure) == 1) continue;
            ++searched;
            CAPTURE(static_cast<double>(figure) / 10000);
            CHECK(shown.count(figure) == 0);
        }
    };
    expect_none(without(html, "<svg", "</svg>"), 4);
    // Points of a picture are many, and of four digits: they meet a figure of the house by chance.
    expect_none(html, 6);
    return searched;
}

}  // namespace

TEST_CASE("no number of a quote's document but those of its order stands anywhere in its offer, under any rule") {
    PlantCopy plant;
    const std::string with_rules =
        text_of_file(plant.folder() + "/plant.yaml") +
        "\npricing:\n  round_up_to: 0.25\n  least_order: 512.35\n  valid_days: 30\n"
        "  second_currency: {code: GBP, rate: 0.8613}\n  approve_below: {0.1234: [A. Example]}\n"
        "  tolerance: {under: 0.05, over: 0.05}\n";
    plant.write("plant.yaml", with_rules);
    std::size_t searched = 0;
    for (const std::string& demo : all_demo_requests()) {
        CAPTURE(demo);
        // A margin of its own, which no other number is taken for.
        const std::string text =
            std::regex_replace(text_of_file(demo), std::regex("margin: [0-9.]+"), "margin: 0.18371");
        searched += secrets_sought(plant.folder(), plant.write("R.yaml", text), "R-10[0-9][0-9]");
    }
    CHECK(searched > 5000);
}

TEST_CASE("no number of a set's pieces stands in its offer, nor of an order that pays a share of its web") {
    SetPlant plant;
    std::string words = text_of_file(FLUTEBOOK_SOURCE_DIR "/config/offer-words.yaml");
    words.replace(words.find("    lid: Lid\n"), 13, "    lid: Lid\n    tray: Tray\n    pad: Pad\n");
    plant.write("offer.yaml", words);
    CHECK(secrets_sought(plant.folder(), plant.write_request("S-1", "200, 1000"), "S-1") > 500);
    const std::string shared = plain_request("N-1", "500, 5000") + "trim: {share: 0.0347, changes: 0.83}\n";
    CHECK(secrets_sought(plant.folder(), plant.write("N-1.yaml", shared), "N-1") > 200);
}
