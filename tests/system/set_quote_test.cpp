// A set as people quote it: the sentences of the design on sets, on a real plant with the real program.
#include <catch2/catch.hpp>
#include <cmath>
#include <filesystem>

#include "tests/system/set_plant.hpp"

using namespace flutebook::fixture;
using Catch::Matchers::Contains;
using Json = nlohmann::ordered_json;

namespace {

Json request_of(const SetPlant& plant, const std::string& file, const std::vector<std::string>& options = {}) {
    std::vector<std::string> words = {"quote", file, "--json"};
    words.insert(words.end(), options.begin(), options.end());
    return plant.document(words).at("requests").at(0);
}

double sum_over_pieces(const Json& request, std::size_t quantity, const char* key) {
    double sum = 0;
    for (const Json& piece : request.at("pieces")) sum += piece.at("quotes").at(quantity).at(key).get<double>();
    return sum;
}

double charged(const Json& quote, const std::string& line) {
    double sum = 0;
    for (const Json& item : quote.at("lines"))
        if (item.at("line") == line) sum += item.at("amount").get<double>();
    return sum;
}

double charged_at(const Json& quote, const std::string& line, std::size_t step) {
    double sum = 0;
    for (const Json& item : quote.at("lines"))
        if (item.at("line") == line && item.at("step") == step) sum += item.at("amount").get<double>();
    return sum;
}

double rounded_to_cents(double amount) {
    return std::floor(amount * 100 + 0.5) / 100;
}

}  // namespace

TEST_CASE("a request of a set has its pieces with name, count and quotes, and its own quotes hold the set's totals") {
    SetPlant plant;
    const Json request = request_of(plant, plant.write_request("S-1", "500, 1000"));
    std::vector<std::string> names;
    for (const Json& piece : request.at("pieces")) names.push_back(piece.at("piece"));
    CHECK(names == std::vector<std::string>{"tray", "lid", "pad"});
    CHECK(request["pieces"][2]["count"] == SetPlant::pads_to_a_set);
    REQUIRE(request.at("quotes").size() == 2);
    for (const char* key : {"quantity", "cost", "cost_per_thousand", "price_per_thousand", "waste_cost", "recovery"})
        CHECK(request["quotes"][0].contains(key));
    CHECK_FALSE(request["quotes"][0].contains("lines"));
    CHECK(request["quotes"][1]["quantity"] == 1000);
}

TEST_CASE("the quantity of a piece is the sets times its count") {
    SetPlant plant;
    const Json request = request_of(plant, plant.write_request("S-1", "500, 1000"));
    for (const Json& piece : request.at("pieces"))
        for (std::size_t i = 0; i < 2; ++i)
            CHECK(piece["quotes"][i]["quantity"].get<double>() ==
                  request["quotes"][i]["quantity"].get<double>() * piece["count"].get<double>());
}

TEST_CASE("the cost of a set is the sum of its pieces', and its price is rounded once, from that sum") {
    SetPlant plant;
    const Json request = request_of(plant, plant.write_request("S-1", "500, 1000, 7000"));
    for (std::size_t i = 0; i < 3; ++i) {
        const Json& set = request["quotes"][i];
        for (const char* key : {"cost", "waste_cost", "recovery"})
            CHECK(set[key].get<double>() == Approx(sum_over_pieces(request, i, key)).margin(1e-9));
        const double per_thousand = set["cost"].get<double>() / set["quantity"].get<double>() * 1000;
        CHECK(set["cost_per_thousand"].get<double>() == Approx(per_thousand).margin(5.1e-5));
        CHECK(set["price_per_thousand"].get<double>() ==
              Approx(rounded_to_cents(per_thousand / (1 - 0.18))).margin(1e-9));
    }
}

TEST_CASE("each piece of a set has its own layout and machines, and its mass balances by itself") {
    SetPlant plant;
    const Json request = request_of(plant, plant.write_request("S-1", "500"));
    for (const Json& piece : request.at("pieces")) {
        const Json& quote = piece["quotes"][0];
        const Json& mass = quote["mass_kg"];
        double out = mass["product"];
        for (const Json& kg : mass["loss"]) out += kg.get<double>();
        const double in = mass["issued"].get<double>() + mass["adhesive"].get<double>();
        CHECK(out == Approx(in).epsilon(1e-9));
        CHECK(mass["product"].get<double>() ==
              Approx(quote["quantity"].get<double>() * quote["blank"]["area_m2"].get<double>() *
                     quote["board_grammage"].get<double>() / 1000));
    }
    CHECK(request["pieces"][0]["quotes"][0]["blank"]["length_mm"] == 900);
    CHECK(request["pieces"][1]["quotes"][0]["blank"]["length_mm"] == 640);
    CHECK(request["pieces"][0]["quotes"][0]["route"].size() == 1);
    CHECK(request["pieces"][2]["quotes"][0]["route"].empty());
}

TEST_CASE("what is paid by the run or the period at dispatch stands on the first piece of a set alone") {
    SetPlant plant;
    const Json request = request_of(plant, plant.write_request("S-1", "500"));
    for (std::size_t p = 0; p < 3; ++p) {
        const Json& quote = request["pieces"][p]["quotes"][0];
        const std::size_t dispatch = quote["route"].size() + 1;
        for (const Json& line : quote["lines"])
            if (p > 0 && line["step"] == dispatch) CHECK(line["behaviour"] == "per-unit");
        CHECK((charged_at(quote, "setup.labour", dispatch) > 0) == (p == 0));
        CHECK((charged_at(quote, "setup.fixed", dispatch) > 0) == (p == 0));
        CHECK(charged_at(quote, "pallets", dispatch) > 0);
    }
}

TEST_CASE("a late model is costed with the first piece of a set alone, and knows there what the others cost") {
    SetPlant plant;
    const std::string file = plant.write_request("S-1", "20");
    const double without = request_of(plant, file)["quotes"][0]["cost"];
    REQUIRE(without < 5000);
    plant.charge_least("5000");
    const Json request = request_of(plant, file);
    CHECK(request["quotes"][0]["cost"].get<double>() == Approx(5000).margin(1e-9));
    CHECK(charged(request["pieces"][0]["quotes"][0], "least_charge") == Approx(5000 - without).margin(1e-9));
    for (const std::size_t p : {std::size_t{1}, std::size_t{2}})
        CHECK(charged(request["pieces"][p]["quotes"][0], "least_charge") == 0);
}

TEST_CASE("the set's line comes first and has the only price; pieces show none") {
    SetPlant plant;
    const std::string file = plant.write_request("S-1", "500");
    const Json request = request_of(plant, file);
    for (const Json& piece : request.at("pieces")) CHECK_FALSE(piece["quotes"][0].contains("price_per_thousand"));
    const std::string text = plant.ask({"quote", file, "--sheet"}).output;
    CHECK_THAT(text, Contains("Price ladder, EUR") && Contains("a set weighs") && Contains("tray on "));
    CHECK_THAT(text, Contains("500 sets") && Contains("tray: 500 pieces, the cheapest of") &&
                         Contains("lid: 500 pieces") && Contains("pad: 1 000 pieces"));
    CHECK(text.find("500 sets") < text.find("tray: 500 pieces"));
    CHECK(text.find("price per thousand boxes") == std::string::npos);
    CHECK(text.find("price per thousand pieces") == std::string::npos);
}

TEST_CASE("a set of which one piece cannot be made is refused with that piece's limits, and nothing has a price") {
    SetPlant plant;
    // The tray's blank of 2400 mm is too long for a die cutter; lid and pads would fit.
    const std::string file = plant.write_request("S-1", "500", "{length: 1900, width: 300, height: 250}");
    const Ended ended = plant.ask({"quote", file, "--json"});
    CHECK(ended.exit_code == 1);
    const Json request = Json::parse(ended.output).at("requests").at(0);
    const Json& refused = request["quotes"][0]["refused"];
    REQUIRE_FALSE(refused.empty());
    for (const Json& way : refused) CHECK_THAT(way["candidate"].get<std::string>(), Contains("tray: "));
    CHECK_FALSE(request["pieces"][0]["quotes"][0]["refused"].empty());
    CHECK(request["pieces"][2]["quotes"][0]["refused"].empty());
    CHECK_THAT(plant.ask({"quote", file}).output, Contains("cannot be made") && Contains("; limits:"));
}

TEST_CASE("more pieces than a plant can be asked for are refused, though the sets are not too many") {
    SetPlant plant;
    const Ended ended = plant.ask({"quote", plant.write_request("S-1", "6000000")});
    CHECK(ended.exit_code == 1);
    CHECK_THAT(ended.errors, Contains("S-1.yaml:7") && Contains("12000000 of pad") && Contains("ask for fewer sets"));
    CHECK(ended.output.empty());
}

TEST_CASE("one, two and eight threads write the same bytes of a set") {
    SetPlant plant;
    plant.charge_least("800");
    const std::string file = plant.write_request("S-1", "100, 500, 1000, 20000");
    const std::string one = plant.ask({"quote", file, "--json", "--threads", "1"}).output;
    CHECK(plant.ask({"quote", file, "--json", "--threads", "2"}).output == one);
    CHECK(plant.ask({"quote", file, "--json", "--threads", "8"}).output == one);
    CHECK_THAT(one, Contains("\"pieces\""));
}

TEST_CASE("a set in HTML shows its pieces by name") {
    SetPlant plant;
    const std::string page = plant.folder() + "/set.html";
    CHECK(plant.ask({"quote", plant.write_request("S-1", "500"), "--html", page}).exit_code == 0);
    CHECK(std::filesystem::file_size(page) > 10'000);
}
