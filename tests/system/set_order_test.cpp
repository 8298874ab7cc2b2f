// A set from the quote that is kept to its cost after production: one order for each piece, on a real ledger.
#include <catch2/catch.hpp>

#include "tests/system/set_plant.hpp"

using namespace flutebook::fixture;
using Catch::Matchers::Contains;
using Json = nlohmann::ordered_json;

namespace {

// A plant in which a set was quoted at 500 and 1000, saved, and taken as 26-0417 of 500 sets.
class TakenSet : public SetPlant {
public:
    explicit TakenSet(const std::string& least = "") {
        if (!least.empty()) charge_least(least);
        request_ = document({"quote", write_request("S-1", "500, 1000"), "--save", "--json"}).at("requests").at(0);
        taken_ = document({"order", "Q000001", "500", "--as", "26-0417", "--json"});
    }

    [[nodiscard]] const Json& request() const { return request_; }
    [[nodiscard]] const Json& taken() const { return taken_; }
    [[nodiscard]] const Json& quote_of(std::size_t piece) const {
        return request_.at("pieces").at(piece).at("quotes")[0];
    }

    void produce_all(double more_rejects_of_lid = 0) {
        produce("26-0417/tray", quote_of(0));
        produce("26-0417/lid", quote_of(1), more_rejects_of_lid);
        produce("26-0417/pad", quote_of(2));
    }

private:
    Json request_, taken_;
};

double sum_of_pieces(const Json& cost, const char* stage) {
    double sum = 0;
    for (const Json& piece : cost.at("pieces")) sum += piece.at("cost").at(stage).get<double>();
    return sum;
}

}  // namespace

TEST_CASE("a saved set is shown as it was, in text and in JSON") {
    SetPlant plant;
    const std::string file = plant.write_request("S-1", "500");
    const std::string then = plant.ask({"quote", file, "--save"}).output;
    const std::string shown = plant.ask({"quote", "show", "Q000001"}).output;
    CHECK_FALSE(shown.empty());
    // The short answer that was saved, and behind it the sheets.
    CHECK(shown.rfind(then.substr(0, then.find("saved as")), 0) == 0);
    const Json document = plant.document({"quote", "show", "Q000001", "--json"});
    CHECK(document["requests"][0]["pieces"].size() == 3);
}

TEST_CASE("a set rechecked differs in nothing, and after a change of a paper's price in the set and in each piece") {
    const TakenSet plant;
    const Ended same = plant.ask({"quote", "recheck", "Q000001", "--json"});
    INFO(same.errors);
    CHECK(same.exit_code == 0);
    CHECK(Json::parse(same.output)["saved_files"]["ends"] == "to-the-byte");

    TakenSet other;
    other.replace("papers.yaml", "per_tonne: 668", "per_tonne: 768");
    const Ended changed = other.ask({"quote", "recheck", "Q000001", "--json"});
    CHECK(changed.exit_code == 1);
    const Json recheck = Json::parse(changed.output);
    CHECK(recheck["cause"] == "plant-files");
    REQUIRE(recheck["quantities"].size() == 8);  // two of the set, each with its three pieces
    CHECK_FALSE(recheck["quantities"][0].contains("piece"));
    CHECK(recheck["quantities"][1]["piece"] == "tray");
    double by = 0;
    for (std::size_t i = 1; i < 4; ++i) {
        CHECK(recheck["quantities"][i]["differs"] == true);
        CHECK_FALSE(recheck["quantities"][i]["lines"].empty());
        by += recheck["quantities"][i]["now"]["cost"].get<double>() -
              recheck["quantities"][i]["was"]["cost"].get<double>();
    }
    CHECK(recheck["quantities"][0]["now"]["cost"].get<double>() -
              recheck["quantities"][0]["was"]["cost"].get<double>() ==
          Approx(by));
    CHECK_THAT(other.ask({"quote", "recheck", "Q000001"}).output, Contains("tray, quantity 500"));
}

TEST_CASE("a set is taken as one order for each piece, all at once, under the plant's number and the piece's name") {
    const TakenSet plant;
    CHECK(plant.taken()["order"] == "26-0417");
    CHECK(plant.taken()["quantity"] == 500);
    std::vector<std::string> numbers;
    std::vector<double> quantities;
    for (const Json& piece : plant.taken()["pieces"]) {
        numbers.push_back(piece["order"]);
        quantities.push_back(piece["quantity"]);
    }
    CHECK(numbers == std::vector<std::string>{"26-0417/tray", "26-0417/lid", "26-0417/pad"});
    CHECK(quantities == std::vector<double>{500, 500, 1000});
    CHECK_THAT(plant.ask({"order", "Q000001", "1000"}).output,
               Contains("order Q000001-1000/tray") && Contains("order Q000001-1000/pad"));
}

TEST_CASE("a number stands for one order or one set: taken twice it is refused, and no piece is taken alone") {
    const TakenSet plant;
    const Ended again = plant.ask({"order", "Q000001", "1000", "--as", "26-0417"});
    CHECK(again.exit_code == 1);
    CHECK_THAT(again.errors, Contains("26-0417") && Contains("taken before"));
    CHECK(plant.ask({"quote", demo_request("R-1001"), "--save"}).exit_code == 0);
    CHECK(plant.ask({"order", "Q000002", "500", "--as", "26-0417"}).exit_code == 1);
    CHECK(plant.ask({"order", "Q000002", "500", "--as", "26-0500/lid"}).exit_code == 0);
    CHECK(plant.ask({"order", "Q000001", "500", "--as", "26-0500"}).exit_code == 1);
    // The tray of 26-0500 was not taken either: its number is free.
    CHECK(plant.ask({"order", "Q000002", "1000", "--as", "26-0500/tray"}).exit_code == 0);
    CHECK(plant.ask({"verify"}).exit_code == 0);
}

TEST_CASE("production is posted to the pieces of a set, and the month balances to the gram") {
    TakenSet plant;
    plant.produce_all();
    const Json month = plant.document({"month", "2026-10", "--json"});
    double product = 0;
    for (std::size_t p = 0; p < 3; ++p) product += plant.quote_of(p)["mass_kg"]["product"].get<double>();
    CHECK(month["product_kg"].get<double>() == Approx(product).margin(0.01));
    CHECK(plant.ask({"verify"}).exit_code == 0);
}

TEST_CASE("a set that was made as it was quoted cost what it was quoted at, piece by piece and in all") {
    for (const char* least : {"", "9000"}) {
        TakenSet plant(least);
        plant.produce_all();
        const Json cost = plant.document({"order", "cost", "26-0417", "--json"});
        CHECK(cost["order"] == "26-0417");
        CHECK(cost["quantity"]["quoted"] == 500);
        CHECK(cost["quantity"]["made"] == 500);
        CHECK(cost["cost"]["quoted"] == plant.request()["quotes"][0]["cost"]);
        CHECK(cost["cost"]["actual"] == plant.request()["quotes"][0]["cost"]);
        CHECK(cost["as_quoted"] == true);
        CHECK(cost["saved_cost"] == cost["cost"]["quoted"]);
        CHECK(cost["cost_per_thousand"]["quoted"] == plant.request()["quotes"][0]["cost_per_thousand"]);
        REQUIRE(cost["pieces"].size() == 3);
        for (std::size_t p = 0; p < 3; ++p) {
            CHECK(cost["pieces"][p]["variance"]["total"] == 0.0);
            CHECK(cost["pieces"][p]["cost"]["quoted"] == plant.quote_of(p)["cost"]);
        }
    }
}

TEST_CASE("the cost of a set is the sum over its pieces at every stage, and rejects of one piece are its own yield") {
    TakenSet plant;
    plant.produce_all(10);
    const Json cost = plant.document({"order", "cost", "26-0417", "--json"});
    for (const char* stage : {"quoted", "standard", "converted", "used", "actual"})
        CHECK(cost["cost"][stage].get<double>() == Approx(sum_of_pieces(cost, stage)).margin(1e-9));
    CHECK(cost["quantity"]["made"].get<double>() < 500);
    CHECK(cost["pieces"][1]["variance"]["yield"].get<double>() > 0);
    CHECK(cost["pieces"][0]["variance"]["total"] == 0.0);
    CHECK(cost["pieces"][2]["variance"]["total"] == 0.0);
    const std::string text = plant.ask({"order", "cost", "26-0417"}).output;
    CHECK_THAT(text, Contains("Piece by piece, EUR") && Contains("26-0417/lid: 500 pieces"));
}

TEST_CASE("what a late model charges for a set as made depends on the actual cost of its pieces") {
    TakenSet plant("9000");
    plant.produce_all(10);
    const Json cost = plant.document({"order", "cost", "26-0417", "--json"});
    // The least charge fills up whatever the pieces cost, so the set comes to it at every stage.
    for (const char* stage : {"quoted", "standard", "converted", "used", "actual"})
        CHECK(cost["cost"][stage].get<double>() == Approx(9000).margin(1e-9));
    CHECK(cost["pieces"][1]["variance"]["total"].get<double>() ==
          Approx(-cost["pieces"][0]["variance"]["total"].get<double>()).margin(1e-9));
}

TEST_CASE("a piece of a set is costed by its own number; the first waits for all others, and the set for every piece") {
    TakenSet plant;
    plant.produce("26-0417/lid", plant.quote_of(1));
    const Json lid = plant.document({"order", "cost", "26-0417/lid", "--json"});
    CHECK(lid["order"] == "26-0417/lid");
    CHECK(lid["piece"] == "lid");
    CHECK(lid["cost"]["actual"] == plant.quote_of(1)["cost"]);
    plant.produce("26-0417/tray", plant.quote_of(0));
    for (const char* number : {"26-0417/tray", "26-0417"}) {
        const Ended ended = plant.ask({"order", "cost", number});
        CHECK(ended.exit_code == 1);
        CHECK_THAT(ended.errors, Contains("order 26-0417/pad: cannot be costed before it is made"));
    }
    plant.produce("26-0417/pad", plant.quote_of(2));
    CHECK(plant.document({"order", "cost", "26-0417/tray", "--json"})["cost"]["actual"] == plant.quote_of(0)["cost"]);
}

TEST_CASE("a box of one piece has no pieces in its document, nor in its order's record") {
    const PlantCopy plant;
    const std::string text = ask_at(plant.folder(), {"quote", demo_request("R-1001"), "--save", "--json"}).output;
    CHECK(text.find("\"pieces\"") == std::string::npos);
    const std::string order = ask_at(plant.folder(), {"order", "Q000001", "500", "--json"}).output;
    CHECK(order.find("piece") == std::string::npos);
}
