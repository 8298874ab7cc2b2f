// A share of trim that nobody wrote down: the ledger's own runs say it, from the first quote to the order's cost.
#include <fmt/format.h>

#include <catch2/catch.hpp>
#include <cmath>
#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>

#include "tests/system/face.hpp"

using namespace flutebook::fixture;
using Catch::Matchers::Contains;
using Json = nlohmann::ordered_json;

namespace {

constexpr const char* runs_header =
    "ref,date,shift,corrugator,order,roll_width,outs,metres,order_change_metres,good_sheets,web\n";

// The demo plant with three orders of the everyday box, and as many runs of them as a test posts.
class RunPlant {
public:
    RunPlant() {
        const Json quote = Json::parse(said({"quote", demo_request("R-1001"), "--save", "--json"}));
        const Json& most = quote["requests"][0]["quotes"][2];
        metres_ = most["web_length_m"];
        good_ = most["good"][0];
        for (const char* number : {"26-1", "26-2", "26-3"}) said({"order", "Q000001", "5000", "--as", number});
    }

    /// Ten rows an order, of which the first has an order change; the last order shares its web with another.
    void post_runs(int first, int past) {
        std::string rows = runs_header;
        for (int n = first; n < past; ++n) {
            const int order = n / 10;
            const bool is_shared = order == 2;
            rows +=
                fmt::format("W{},2026-{:02}-1{},early,C1,26-{},{},{},{},{},{},{}\n", n, 7 + order, n % 10, order + 1,
                            is_shared ? "1225" : "", is_shared ? "2" : "", metres_, n % 10 == 0 ? "25" : "0",
                            is_shared ? std::floor(good_ / 2) : good_, is_shared ? "2450" : "");
        }
        said({"post", plant_.write(fmt::format("runs-{}.csv", first), rows)});
    }

    std::string request(const std::string& trim) {
        std::ostringstream text;
        text << std::ifstream(demo_request("R-1001")).rdbuf() << "\n" << trim << "\n";
        return plant_.write("asked.yaml", text.str());
    }

    [[nodiscard]] Ended ask(const std::vector<std::string>& words) const { return ask_at(plant_.folder(), words); }
    std::string said(const std::vector<std::string>& words) const {
        const Ended ended = ask(words);
        INFO(ended.errors);
        REQUIRE(ended.exit_code == 0);
        return ended.output;
    }
    [[nodiscard]] Json trim_of(const std::string& trim) {
        return Json::parse(said({"quote", request(trim), "--json"}))["requests"][0]["trim"];
    }
    std::string write(const std::string& file, const std::string& text) { return plant_.write(file, text); }
    void plant_says(const std::string& trim) {
        plant_.replace("plant.yaml", "\ncurrency:", "\n" + trim + "\ncurrency:");
    }

private:
    PlantCopy plant_;
    double metres_ = 0, good_ = 0;
};

// A smaller box on the same board, five out of 2450 mm, quoted under the ledger's share, taken, and made on a web of
// its own in the metres that a web of its own takes.
void make_smaller_box(RunPlant& plant) {
    const std::string box = plant.write("box.yaml",
                                        "request: T-1\ndate: 2026-10-15\nstyle: \"0201\"\nboard: B-140\n"
                                        "inside: {length: 360, width: 260, height: 200}\n"
                                        "quantities: [2000]\nmargin: 0.18\ntrim: share\nroute: [FG1]\n");
    plant.said({"quote", box, "--save"});
    plant.said({"order", "Q000002", "2000", "--as", "26-9"});
    plant.said({"post",
                plant.write("web.csv",
                            "ref,date,shift,corrugator,order,metres,order_change_metres,good_sheets\n"
                            "X1,2026-10-16,early,C1,26-9,563.33,25,2065\n"),
                plant.write("boxes.csv",
                            "ref,date,shift,converter,order,fed,setup_sheets,rejected,good_boxes\n"
                            "Y1,2026-10-16,late,FG1,26-9,2065,40,25,2000\n")});
}

double usage_of(const Json& list, const char* key, const std::string& name) {
    for (const Json& item : list)
        if (item[key] == name) return item["variance"]["usage"];
    FAIL("not among them: " << name);
    return 0;
}

}  // namespace

TEST_CASE("a share that the ledger cannot say yet is refused with the runs that were found, and what to do") {
    RunPlant plant;
    plant.post_runs(0, 29);
    const Ended ended = plant.ask({"quote", plant.request("trim: share")});
    CHECK(ended.exit_code == 1);
    CHECK_THAT(ended.errors,
               Contains("trim: no share of trim is known: found 29 corrugator runs of B-140 and 29 of "
                        "the plant in ") &&
                   Contains("from 2025-10 to 2026-09, expected 30 of either; post them, or give numbers"));
}

TEST_CASE("thirty runs of the board say its share and its order changes, of a shared web by its width") {
    RunPlant plant;
    plant.post_runs(0, 30);
    const Json trim = plant.trim_of("trim: share");
    CHECK(trim["share"].get<double>() == Approx((2450 - 4 * 559) / 2450.0).epsilon(1e-5));
    CHECK(trim["changes"].get<double>() == Approx(2.5 / 3));
    const Json& origin = trim["origin"];
    CHECK(origin["of"] == "board");
    CHECK(origin["runs"] == 30);
    CHECK(origin["orders"] == 3);
    CHECK(origin["order_changes"] == 2.5);
    CHECK(origin["from"] == "2025-10");
    CHECK(origin["to"] == "2026-09");
    const std::string text = plant.said({"quote", plant.request("trim: share")});
    CHECK_THAT(text, Contains("counted from 30 runs of B-140 for 3 orders, 2025-10 to 2026-09"));
}

TEST_CASE("runs outside the twelve whole months before the order's date, and runs that were undone, do not count") {
    RunPlant plant;
    plant.post_runs(0, 30);
    const auto runs_on = [&](const std::string& day) {
        const Ended ended = plant.ask({"quote", plant.request("trim: share"), "--date", day});
        return ended.errors;
    };
    CHECK_THAT(runs_on("2026-09-30"), Contains("found 20 corrugator runs of B-140"));
    CHECK(runs_on("2026-10-01").empty());
    static_cast<void>(plant.said({"reverse", "W0", "--why", "keyed twice"}));
    CHECK_THAT(runs_on("2026-10-01"), Contains("found 29 corrugator runs of B-140"));
}

TEST_CASE("the plant's own numbers count until the ledger has thirty runs, and a request's numbers always") {
    RunPlant plant;
    plant.plant_says("trim: {share: 0.03, changes: 0.6}");
    plant.post_runs(0, 29);
    const Json early = plant.trim_of("");
    CHECK(early["share"] == 0.03);
    CHECK(early["changes"] == 0.6);
    CHECK(early["origin"]["of"] == "first-days");
    CHECK(early["origin"]["board_runs"] == 29);
    plant.post_runs(29, 30);
    CHECK(plant.trim_of("")["origin"]["of"] == "board");
    const Json own = plant.trim_of("trim: {share: 0.02}");
    CHECK(own["share"] == 0.02);
    CHECK_FALSE(own.contains("origin"));
}

TEST_CASE("a saved quote keeps its share; recheck tells what today's ledger would give, and whose doing that is") {
    RunPlant plant;
    plant.post_runs(0, 29);
    plant.plant_says("trim: {share: 0.03, changes: 0.6}");
    const std::string kept = plant.said({"quote", plant.request(""), "--save", "--json"});
    CHECK(plant.ask({"quote", "recheck", "Q000002"}).exit_code == 0);
    plant.post_runs(29, 30);
    const Ended ended = plant.ask({"quote", "recheck", "Q000002"});
    CHECK(ended.exit_code == 1);
    CHECK_THAT(ended.output, Contains("by the share of trim that the ledger has now") &&
                                 Contains("The saved files still give the saved answer, byte for byte") &&
                                 Contains("was: 3 % of the board and 0.6 of an order change") &&
                                 Contains("now: 8.7347 % of the board"));
    const Json checked = Json::parse(plant.ask({"quote", "recheck", "Q000002", "--json"}).output);
    CHECK(checked["cause"] == "ledger");
    CHECK(checked["trim"]["was"]["share"] == 0.03);
    CHECK(checked["trim"]["now"]["origin"]["of"] == "board");
    const Json shown = Json::parse(plant.said({"quote", "show", "Q000002", "--json"}));
    CHECK(shown["requests"][0]["trim"] == Json::parse(kept)["requests"][0]["trim"]);
}

TEST_CASE("a month tells its trim and that of twelve months, a board's own from thirty runs, in every form") {
    RunPlant plant;
    plant.post_runs(0, 30);
    const Json trim = Json::parse(plant.said({"month", "2026-09", "--json"}))["trim"];
    CHECK(trim["month"]["runs"] == 10);
    CHECK(trim["twelve_months"]["runs"] == 30);
    REQUIRE(trim["boards"].size() == 1);
    CHECK(trim["boards"][0]["board"] == "B-140");
    CHECK(trim["boards"][0]["twelve_months"]["share"] == plant.trim_of("trim: share")["share"]);
    CHECK(Json::parse(plant.said({"month", "2026-08", "--json"}))["trim"]["boards"].empty());
    CHECK_THAT(plant.said({"month", "2026-09"}), Contains("Trim of the webs") && Contains("2025-10 to 2026-09"));
}

// By hand. 2065 sheets, five out, are 413 chops of 1.28 m, 528.64 m; with 1.8 % of run waste 538.330 m, and 563.33 m
// with a change of 25 m. The ledger's share is 214 mm of 2450 mm, and 2.5 changes of three orders: the quote pays 2345
// / (2450 - 214) x 538.330 + 2.5 / 3 x 25 = 585.406 m, which is 22.076 m more than a web of its own took. A ply is g/m2
// x take-up x price a kg / 1000, on 2.45 m, of which 1.2 % stay on the roll; and a whole change has a sixth of 1.5
// minutes more than was quoted, at 240 an hour of labour and 380 of fixed cost.
TEST_CASE("an order quoted under the ledger's share is costed against the share that its quote kept") {
    RunPlant plant;
    plant.post_runs(0, 30);
    make_smaller_box(plant);
    const std::string said = plant.said({"order", "cost", "26-9", "--json"});
    const Json cost = Json::parse(said);
    CHECK(cost["as_quoted"] == true);
    CHECK(cost["cost"]["quoted"] == cost["saved_cost"]);
    for (const char* cause : {"volume", "yield", "price"}) CHECK(cost["variance"][cause] == 0);
    CHECK(cost["variance"]["usage"] == cost["variance"]["total"]);
    const Json& web = cost["steps"][0];
    CHECK(web["allowed"]["fed"].get<double>() == Approx(585.406).margin(0.001));
    CHECK(web["allowed"]["setup"].get<double>() == Approx(20.833).margin(0.001));
    const double area = -22.076 * 2.45 / 0.988;
    const Json& inputs = cost["inputs"];
    CHECK(usage_of(inputs, "material", "KL135") == Approx(area * 0.135 * 0.668).margin(0.0005));
    CHECK(usage_of(inputs, "material", "SC127") == Approx(area * 0.127 * 1.32 * 0.622).margin(0.0005));
    CHECK(usage_of(inputs, "material", "TL125") == Approx(area * 0.125 * 0.52).margin(0.0005));
    CHECK(usage_of(cost["lines"], "line", "setup.labour") == Approx(1.5 / 60 / 6 * 240).margin(0.0001));
    CHECK(usage_of(cost["lines"], "line", "setup.fixed") == Approx(1.5 / 60 / 6 * 380).margin(0.0001));

    static_cast<void>(plant.said({"reverse", "W0", "--why", "keyed twice"}));
    CHECK(plant.ask({"quote", plant.request("trim: share")}).exit_code == 1);  // 29 runs say no share any more
    CHECK(plant.said({"order", "cost", "26-9", "--json"}) == said);
}
