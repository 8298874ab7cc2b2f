// A plant whose run is laid out by a model of its own: whoever compares with the formulas of `run` later is told so.
#include <fmt/format.h>

#include <catch2/catch.hpp>
#include <filesystem>
#include <nlohmann/json.hpp>

#include "tests/system/face.hpp"

using namespace flutebook::fixture;
using Catch::Matchers::Contains;
using Json = nlohmann::ordered_json;

namespace {

// R-1001 was quoted, saved, taken at a quantity as order 26-0417, and made as the quote allows.
class MadeOrder : public PlantCopy {
public:
    enum class Run { shipped, replaced };
    MadeOrder(Run run, double quantity) {
        if (run == Run::replaced) take_own_run();
        answer_ = Json::parse(ask({"quote", demo_request("R-1001"), "--save", "--json"}).output);
        REQUIRE(ask({"order", "Q000001", fmt::format("{}", quantity), "--as", "26-0417"}).exit_code == 0);
        for (const Json& quote : answer_["requests"][0]["quotes"])
            if (quote["quantity"] == quantity) produce(quote);
    }

    [[nodiscard]] Ended ask(const std::vector<std::string>& words) const { return ask_at(folder(), words); }
    [[nodiscard]] Json parsed(const std::vector<std::string>& words) const { return Json::parse(ask(words).output); }
    [[nodiscard]] const Json& answer() const { return answer_; }

private:
    // Its losses are others than the formulas' at 5000 alone.
    void take_own_run() {
        std::filesystem::create_directory(folder() + "/plugins");
        std::filesystem::copy_file(FLUTEBOOK_OWNRUN, folder() + "/plugins/ownrun.so");
        replace("plugins.yaml", "  - run: {}", "  - ownrun: {}");
    }

    void produce(const Json& quote) {
        const double fed = quote["fed"][1];
        const double boxes = quote["quantity"];
        const std::string web = fmt::format("W1,2026-10-15,early,C1,26-0417,{},25,{}\n",
                                            quote["web_length_m"].get<double>(), quote["good"][0].get<double>());
        const std::string gluer =
            fmt::format("M1,2026-10-15,late,FG1,26-0417,{},40,{},{}\n", fed, fed - 40 - boxes, boxes);
        const std::string first =
            write("web.csv", "ref,date,shift,corrugator,order,metres,order_change_metres,good_sheets\n" + web);
        const std::string second =
            write("fg.csv", "ref,date,shift,converter,order,fed,setup_sheets,rejected,good_boxes\n" + gluer);
        const Ended posted = ask({"post", first, second});
        INFO(posted.errors);
        REQUIRE(posted.exit_code == 0);
    }

    Json answer_;
};

constexpr const char* told = "losses are expected by the formulas of the run, but were quoted by ownrun";

}  // namespace

TEST_CASE("a model in the place of `run` is reported at the start, in JSON and on standard error") {
    const MadeOrder plant(MadeOrder::Run::replaced, 500);
    REQUIRE(plant.answer()["warnings"].size() == 1);
    const Json warning = plant.answer()["warnings"][0];
    CHECK_THAT(warning["at"].get<std::string>(), Contains("/plugins.yaml:5:5"));
    CHECK_THAT(warning["text"].get<std::string>(), Contains("losses are quoted by ownrun, not by `run`"));
    CHECK_THAT(plant.ask({"plugin", "list"}).errors, Contains("warning: ") && Contains("losses are quoted by ownrun"));
}

TEST_CASE("losses that differ from the formulas are reported by the quote, the order's cost and the month") {
    const MadeOrder plant(MadeOrder::Run::replaced, 5000);
    const Json warnings = plant.answer()["requests"][0]["warnings"];
    REQUIRE(warnings.size() == 1);  // 500 and 1000 lose as the formulas say
    CHECK_THAT(warnings[0]["text"].get<std::string>(),
               Contains("the losses at 5000 are those of ownrun, not of the formulas"));
    CHECK(plant.parsed({"order", "cost", "26-0417", "--json"})["losses_quoted_by"] == "ownrun");
    CHECK_THAT(plant.ask({"order", "cost", "26-0417"}).output, Contains(told));
    CHECK(plant.parsed({"month", "2026-10", "--json"})["losses_quoted_by"] == Json::array({"ownrun"}));
    CHECK_THAT(plant.ask({"month", "2026-10"}).output, Contains(told));
}

TEST_CASE("losses that equal the formulas give no warning, whichever model made them") {
    for (const auto run : {MadeOrder::Run::shipped, MadeOrder::Run::replaced}) {
        const MadeOrder plant(run, 500);
        CHECK(plant.parsed({"order", "cost", "26-0417", "--json"})["losses_quoted_by"].is_null());
        CHECK(plant.parsed({"month", "2026-10", "--json"})["losses_quoted_by"].empty());
        CHECK(plant.answer()["warnings"].empty() == (run == MadeOrder::Run::shipped));
    }
    const MadeOrder plant(MadeOrder::Run::shipped, 5000);
    CHECK(plant.answer()["requests"][0]["warnings"].empty());
}
