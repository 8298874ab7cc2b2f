// Quotes that are kept and orders taken from them, as people and scripts meet them.
#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>

#include "tests/system/face.hpp"

using namespace flutebook::fixture;
using Catch::Matchers::Contains;
using Json = nlohmann::ordered_json;

namespace {

// A copy of the demo plant in which R-1001 was quoted and saved.
class PlantWithSavedQuote : public PlantCopy {
public:
    PlantWithSavedQuote() : saved_(ask({"quote", demo_request("R-1001"), "--save"})) {}

    [[nodiscard]] Ended ask(const std::vector<std::string>& words) const { return ask_at(folder(), words); }
    [[nodiscard]] const Ended& saved() const { return saved_; }

private:
    Ended saved_;
};

}  // namespace

TEST_CASE("saving a quote prints its number, and a quote that is not saved creates no ledger") {
    const PlantCopy plant;
    CHECK(ask_at(plant.folder(), {"quote", demo_request("R-1001")}).exit_code == 0);
    CHECK_FALSE(std::filesystem::exists(plant.folder() + "/ledger.db"));
    const PlantWithSavedQuote saved;
    CHECK(saved.saved().exit_code == 0);
    CHECK_THAT(saved.saved().output, Contains("saved as Q000001"));
    const Json second = Json::parse(saved.ask({"quote", demo_request("R-1007"), "--save", "--json"}).output);
    CHECK(second["requests"][0]["saved"] == "Q000002");
}

TEST_CASE("a saved quote is shown as it was though the plant's prices have changed since") {
    const PlantWithSavedQuote plant;
    const std::string then = plant.ask({"quote", "show", "Q000001"}).output;
    const std::string json_then = plant.ask({"quote", "show", "Q000001", "--json"}).output;
    CHECK(plant.ask({"quote", "--json", "show", "Q000001"}).output == json_then);
    std::ofstream(plant.folder() + "/papers.yaml") << "papers: {}\n";
    CHECK(plant.ask({"quote", "show", "Q000001"}).output == then);
    CHECK(plant.ask({"quote", "show", "Q000001", "--json"}).output == json_then);
    // The short answer that was saved, and behind it the sheets.
    const std::string& saved = plant.saved().output;
    CHECK(then.rfind(saved.substr(0, saved.find("saved as")), 0) == 0);
    CHECK(Json::parse(json_then)["requests"][0]["quotes"].size() == 3);
}

TEST_CASE("an order that fits nowhere is not saved") {
    const PlantCopy plant;
    const Ended ended = ask_at(plant.folder(), {"quote", demo_request("R-1009"), "--save"});
    CHECK(ended.exit_code == 1);
    CHECK_FALSE(std::filesystem::exists(plant.folder() + "/ledger.db"));
}

TEST_CASE("a quote is taken as an order at a quantity it holds, under the plant's own number, once") {
    const PlantWithSavedQuote plant;
    const Ended taken = plant.ask({"order", "Q000001", "500", "--as", "26-0417", "--json"});
    CHECK(taken.exit_code == 0);
    CHECK(Json::parse(taken.output)["order"] == "26-0417");
    CHECK(Json::parse(taken.output)["corrugator"] == "C1");
    const Ended again = plant.ask({"order", "Q000001", "1000", "--as", "26-0417"});
    CHECK(again.exit_code == 1);
    CHECK_THAT(again.errors, Contains("26-0417") && Contains("taken before"));
    CHECK_THAT(plant.ask({"order", "Q000001", "1000"}).output, Contains("order Q000001-1000"));
}

TEST_CASE("taking an order prints its customer, where the request names one") {
    PlantCopy plant;
    const auto taken = [&](const std::string& number, const std::string& customer) {
        const std::string file = plant.write("P-1.yaml", plain_request("P-1", number) + customer);
        CHECK(ask_at(plant.folder(), {"quote", file, "--save"}).exit_code == 0);
        return ask_at(plant.folder(), {"order", "Q00000" + number, number}).output;
    };
    CHECK_THAT(taken("1", "customer: Ashlar Tiles\n"), Contains("1 of 0201 for Ashlar Tiles, by "));
    CHECK_THAT(taken("2", ""), Contains("2 of 0201, by "));
}

TEST_CASE("an order at a quantity that the quote does not hold is refused with those it holds") {
    const PlantWithSavedQuote plant;
    const Ended ended = plant.ask({"order", "Q000001", "501"});
    CHECK(ended.exit_code == 1);
    CHECK_THAT(ended.errors, Contains("found 501") && Contains("500, 1000, 5000"));
}

TEST_CASE("an order's number that no document could name is refused") {
    const PlantWithSavedQuote plant;
    for (const std::string& number : {std::string(" 26-0417"), std::string("26-0417 "), std::string(81, '7')}) {
        const Ended ended = plant.ask({"order", "Q000001", "500", "--as", number});
        CHECK(ended.exit_code == 1);
        CHECK_THAT(ended.errors, Contains("not a usable order number") && Contains(number));
    }
    CHECK(plant.ask({"order", "Q000001", "500", "--as", std::string(80, '7')}).exit_code == 0);
}

TEST_CASE("a run is posted against an order that was taken from a saved quote") {
    const PlantWithSavedQuote plant;
    CHECK(plant.ask({"order", "Q000001", "500", "--as", "26-0417"}).exit_code == 0);
    const std::string file = plant.folder() + "/runs.csv";
    std::ofstream(file) << "ref,date,shift,corrugator,order,metres,order_change_metres,good_sheets\n"
                           "CR-1,2026-11-02,early,C1,26-0417,226,25,547\n";
    const Ended posted = plant.ask({"post", file});
    CHECK(posted.exit_code == 0);
    CHECK(posted.errors.empty());
    const Json month = Json::parse(plant.ask({"month", "2026-11", "--json"}).output);
    CHECK(month["floor_kg"]["made"].get<double>() > 180);
    CHECK(month["loss_kg"]["side-trim"].get<double>() > 20);
}
