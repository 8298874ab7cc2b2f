// A quote that pays a share of its web: the everyday box beside itself alone, from its price to the month that expects
// what it was quoted with.
#include <fmt/format.h>

#include <catch2/catch.hpp>
#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>

#include "tests/system/face.hpp"

using namespace flutebook::fixture;
using Catch::Matchers::Contains;
using Json = nlohmann::ordered_json;

namespace {

// Of the demo plant: R-1001 on C1, four out of a roll.
constexpr double roll_mm = 2450, used_mm = 4 * 559, change_m = 25;
constexpr double shared = 0.0288, changes = 0.6;

std::string text_of(const std::string& file) {
    std::ostringstream text;
    text << std::ifstream(file).rdbuf();
    return text.str();
}

std::string everyday_box(const std::string& trim) {
    return text_of(demo_request("R-1001")) + (trim.empty() ? "" : "\ntrim: " + trim + "\n");
}

std::string shared_box() {
    return everyday_box(fmt::format("{{share: {}, changes: {}}}", shared, changes));
}

Json quoted(const PlantCopy& plant, const std::string& file, const std::vector<std::string>& options = {}) {
    std::vector<std::string> words = {"quote", file, "--json"};
    words.insert(words.end(), options.begin(), options.end());
    const Ended ended = ask_at(plant.folder(), words);
    INFO(ended.errors);
    REQUIRE(ended.exit_code == 0);
    return Json::parse(ended.output)["requests"][0];
}

std::string said(const PlantCopy& plant, const std::vector<std::string>& words) {
    const Ended ended = ask_at(plant.folder(), words);
    INFO(ended.errors);
    REQUIRE(ended.exit_code == 0);
    return ended.output;
}

double total(const Json& object) {
    double sum = 0;
    for (const Json& value : object) sum += value.get<double>();
    return sum;
}

}  // namespace

TEST_CASE("with the order's own trim as the share, and one order change, every amount is that of the order alone") {
    PlantCopy plant;
    const std::string own = fmt::format("{{share: {}}}", (roll_mm - used_mm) / roll_mm);
    const std::vector<std::string> way = {"--roll", "2450"};
    const Json share = quoted(plant, plant.write("own.yaml", everyday_box(own)), way);
    const Json alone = quoted(plant, plant.write("alone.yaml", everyday_box("")), way);
    for (std::size_t i = 0; i < alone["quotes"].size(); ++i) {
        CAPTURE(i);
        const Json &left = share["quotes"][i], &right = alone["quotes"][i];
        CHECK(left["price_per_thousand"] == right["price_per_thousand"]);
        CHECK(left["cost"] == right["cost"]);
        REQUIRE(left["lines"].size() == right["lines"].size());
        for (std::size_t n = 0; n < left["lines"].size(); ++n)
            CHECK(left["lines"][n]["amount"] == right["lines"][n]["amount"]);
    }
}

TEST_CASE("an order pays for its width of an average web, and for its part of an order change") {
    PlantCopy plant;
    const Json share = quoted(plant, plant.write("shared.yaml", shared_box()))["quotes"][0];
    const Json alone = quoted(plant, plant.write("alone.yaml", everyday_box("")))["quotes"][0];
    const double width = used_mm / (roll_mm * (1 - shared));
    const double sheets_m = alone["web_length_m"].get<double>() - change_m;  // run waste among them
    const double metres = width * sheets_m + changes * change_m;
    CHECK(share["web_length_m"].get<double>() == Approx(metres).epsilon(1e-12));
    const double gsm = share["board_grammage"].get<double>();
    const Json& loss = share["mass_kg"]["loss"];
    CHECK(loss["side-trim"].get<double>() == Approx(metres * roll_mm / 1000 * shared * gsm / 1000).epsilon(1e-9));
    CHECK(loss["order-change"].get<double>() ==
          Approx(changes * change_m * roll_mm / 1000 * (1 - shared) * gsm / 1000).epsilon(1e-9));
    CHECK(loss["corrugator-run"].get<double>() ==
          Approx(alone["mass_kg"]["loss"]["corrugator-run"].get<double>()).epsilon(1e-9));
}

TEST_CASE("what an order with a share takes in is its boxes and its losses") {
    PlantCopy plant;
    for (const Json& quote : quoted(plant, plant.write("shared.yaml", shared_box()))["quotes"]) {
        const Json& mass = quote["mass_kg"];
        CHECK(mass["issued"].get<double>() + mass["adhesive"].get<double>() ==
              Approx(mass["product"].get<double>() + total(mass["loss"])).epsilon(1e-9));
    }
}

TEST_CASE("a price with a share of trim is shown with the price alone, equal to that of the request without one") {
    PlantCopy plant;
    const Json share = quoted(plant, plant.write("shared.yaml", shared_box()));
    const Json alone = quoted(plant, plant.write("alone.yaml", everyday_box("")));
    REQUIRE(share["trim"]["alone"].size() == 3);
    for (std::size_t i = 0; i < 3; ++i)
        CHECK(share["trim"]["alone"][i]["price_per_thousand"] == alone["quotes"][i]["price_per_thousand"]);
    CHECK_FALSE(alone.contains("trim"));
    CHECK_THAT(said(plant, {"quote", plant.folder() + "/shared.yaml"}),
               Contains("Trim shared: 2.88 % of the board and 0.6 of an order change") && Contains("798.46"));
}

TEST_CASE("the plant's way to pay for trim counts where a request says nothing, and the request's own before it") {
    PlantCopy plant;
    plant.replace("plant.yaml", "\ncurrency:", "\ntrim: {share: 0.0288, changes: 0.6}\ncurrency:");
    const Json share = quoted(plant, plant.write("shared.yaml", shared_box()));
    const Json plants = quoted(plant, plant.write("plants.yaml", everyday_box("")));
    const Json alone = quoted(plant, plant.write("alone.yaml", everyday_box("alone")));
    CHECK(plants["quotes"][0]["lines"] == share["quotes"][0]["lines"]);
    CHECK(plants["trim"]["alone"] == share["trim"]["alone"]);
    CHECK(plants["trim"]["origin"]["of"] == "first-days");
    CHECK_FALSE(alone.contains("trim"));
    CHECK(alone["quotes"][0]["price_per_thousand"] == 798.46);
}

TEST_CASE("a layout that trims more than three times the share is warned of") {
    PlantCopy plant;
    const auto warnings = [&](const std::string& trim) {
        return quoted(plant, plant.write("r.yaml", everyday_box(trim)))["warnings"];
    };
    const Json told = warnings("{share: 0.0288, changes: 0.6}");
    REQUIRE(told.size() == 1);
    CHECK_THAT(told[0]["text"].get<std::string>(), Contains("at 500, 1000, 5000 the layout trims 8.73 % of its roll"));
    CHECK(warnings("{share: 0.0875}").empty());
}

TEST_CASE("a share that is none, and a way to pay that is unknown, are refused at their places") {
    PlantCopy plant;
    const auto refusal = [&](const std::string& trim) {
        const Ended ended = ask_at(plant.folder(), {"quote", plant.write("r.yaml", everyday_box(trim))});
        CHECK(ended.exit_code == 1);
        return ended.errors;
    };
    CHECK_THAT(refusal("{share: 1.2}"), Contains("trim.share: out of range: found 1.2"));
    CHECK_THAT(refusal("{share: 0.03, change: 1}"), Contains("trim.change: unknown key; did you mean `changes`"));
    CHECK_THAT(refusal("{changes: 0.5}"), Contains("trim.share"));
    CHECK_THAT(refusal("half"), Contains("trim: unknown way to pay for trim: found `half`, expected `alone`"));
}

TEST_CASE(
    "a row of a list that cannot be made has its reason under a share too, and the others have the share's price") {
    PlantCopy plant;
    plant.replace("plant.yaml", "\ncurrency:", "\ntrim: {share: 0.0288, changes: 0.6}\ncurrency:");
    const std::string list = plant.write("list.csv",
                                         "request,date,style,length,width,height,board,quantity,margin,colours,route\n"
                                         "A,2026-10-15,0201,400,300,250,B-140,500,0.18,2,FG1\n"
                                         "B,2026-10-15,0201,9000,9000,250,B-140,500,0.18,2,FG1\n");
    const Ended ended = ask_at(plant.folder(), {"quote", list, "--json"});
    CHECK(ended.exit_code == 1);
    const Json rows = Json::parse(ended.output)["rows"];
    REQUIRE(rows.size() == 2);
    const std::string box =
        "request: A\ndate: 2026-10-15\nstyle: \"0201\"\ninside: {length: 400, width: 300, height: "
        "250}\nboard: B-140\nquantities: [500]\nmargin: 0.18\ncolours: 2\nroute: [FG1]\n";
    const Json quote = quoted(plant, plant.write("a.yaml", box));
    CHECK(rows[0]["price_per_thousand"] == quote["quotes"][0]["price_per_thousand"]);
    CHECK(rows[0]["price_per_thousand"] < quote["trim"]["alone"][0]["price_per_thousand"]);
    CHECK_THAT(rows[1].dump(), Contains("list.csv:3:1: request B at 500: it cannot be made"));
    CHECK_THAT(ended.errors, Contains("list.csv:3:1: request B at 500: it cannot be made"));
}

TEST_CASE("the month expects the losses that an order with a share of trim was quoted with") {
    PlantCopy plant;
    const Json quote =
        Json::parse(said(plant, {"quote", plant.write("shared.yaml", shared_box()), "--save", "--json"}));
    const Json& quantity = quote["requests"][0]["quotes"][0];
    said(plant, {"order", "Q000001", "500", "--as", "26-1"});
    const double sheets = quantity["good"][0];
    const std::string runs = fmt::format(
        "ref,date,shift,corrugator,order,metres,order_change_metres,good_sheets\n"
        "W1,2026-10-15,early,C1,26-1,{},{},{}\n",
        quantity["web_length_m"].get<double>() + 30, change_m, sheets);
    said(plant, {"post", plant.write("runs.csv", runs)});
    const Json expected = Json::parse(said(plant, {"month", "2026-10", "--json"}))["expected_kg"];
    const Json& loss = quantity["mass_kg"]["loss"];
    for (const char* cause : {"side-trim", "order-change", "roll-ends"}) {
        CAPTURE(cause);
        CHECK(expected[cause].get<double>() == Approx(loss[cause].get<double>()).margin(0.001));
    }
}

TEST_CASE("a saved quote with a share is shown and rechecked as it was") {
    PlantCopy plant;
    const Json quote = quoted(plant, plant.write("shared.yaml", shared_box()), {"--save"});
    CHECK(Json::parse(said(plant, {"quote", "show", "Q000001", "--json"}))["requests"][0]["trim"] == quote["trim"]);
    CHECK_THAT(said(plant, {"quote", "show", "Q000001"}), Contains("Trim shared"));
    CHECK(ask_at(plant.folder(), {"quote", "recheck", "Q000001"}).exit_code == 0);
}
