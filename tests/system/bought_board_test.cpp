// A board that is bought as sheets, from boards.yaml to the order.
#include <catch2/catch.hpp>
#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>

#include "tests/system/face.hpp"

using namespace flutebook::fixture;
using Catch::Matchers::Contains;
using Json = nlohmann::ordered_json;

namespace {

const std::string of_sheets =
    "request: N-1\ndate: 2026-10-15\nstyle: \"0110\"\ninside: {length: 600, width: 900}\nboard: NB-520\n"
    "quantities: [1000]\nmargin: 0.2\n";

Json request_of(const Ended& ended) {
    INFO(ended.errors);
    REQUIRE(ended.exit_code == 0);
    return Json::parse(ended.output)["requests"][0];
}

Json line_of(const Json& quote, const std::string& name) {
    for (const Json& line : quote["lines"])
        if (line["line"] == name) return line;
    return {};
}

// Of the demo's boxes on a bought board, in a copy of the plant where they are saved as Q000001.
class SavedBoxes : public PlantCopy {
public:
    SavedBoxes() { REQUIRE(ask({"quote", demo_request("R-1014"), "--save"}).exit_code == 0); }
    [[nodiscard]] Ended ask(const std::vector<std::string>& words) const { return ask_at(folder(), words); }
};

}  // namespace

TEST_CASE("sheets that are bought cost their square metres, what arrives unfit among them, and no machine") {
    PlantCopy plant;
    const std::string file = plant.write("N-1.yaml", of_sheets);
    const Json quote = request_of(ask_at(plant.folder(), {"quote", file, "--json"}))["quotes"][0];
    CHECK(quote["bought_from"] == "Northlea Sheets");
    // 1000 x 0.6 m x 0.9 m / (1 - 0.02) = 551.0204 m2 at 0.424.
    const Json line = line_of(quote, "bought-board");
    CHECK(line["unit"] == "m2");
    CHECK(line["quantity"].get<double>() == Approx(551.0204082).epsilon(1e-9));
    CHECK(line["rate"].get<double>() == Approx(0.424).epsilon(1e-12));
    CHECK(line["amount"] == 233.6327);
    CHECK(quote["machine_hours"][0] == 0);
    for (const Json& each : quote["lines"])
        if (each["step"] == 0) {
            INFO(each.dump());
            const std::string name = each["line"];
            // What arrives unfit is baled, and sold.
            CHECK((name == "bought-board" || name == "energy.power" || name.starts_with("scrap.")));
        }
    // 11.0204 m2 of 520 g at 0.148 a kWh, 25 kWh a tonne.
    CHECK(line_of(quote, "energy.power")["amount"] == 0.0212);
}

TEST_CASE("sheets that are bought are ordered in the size wanted: one out, and no trim") {
    const Json quote = request_of(quote_demo({demo_request("R-1014")}, {"--json"}))["quotes"][0];
    CHECK(quote["outs"] == 1);
    CHECK(quote["trim_mm"] == 0);
    CHECK(quote["roll_width_mm"] == quote["slit_mm"]);
    const Json& mass = quote["mass_kg"];
    double lost = 0;
    for (const Json& kg : mass["loss"]) lost += kg.get<double>();
    CHECK(mass["adhesive"] == 0);
    CHECK(mass["issued"].get<double>() == Approx(mass["product"].get<double>() + lost).epsilon(1e-9));
}

TEST_CASE("the sheet of a quote names who delivers the board where a corrugator would stand") {
    const std::string text = quote_demo({demo_request("R-1014")}, {"--sheet", "600"}).output;
    CHECK_THAT(text, Contains("bought from Northlea Sheets > FG1") && Contains("board at prices of 2026-10-15") &&
                         Contains("Board, bought as sheets") && Contains("board bought") && Contains("Arrived unfit") &&
                         Contains("of the board bought"));
    CHECK_THAT(text, !Contains("roll ") && !Contains("Paper ") && !Contains("Side trim") && !Contains("paper issued"));
}

TEST_CASE("the price of a bought board is traced to its square metre, with file and line") {
    const Ended ended = quote_demo({demo_request("R-1014")}, {"--explain", "bought-board@600"});
    INFO(ended.errors);
    CHECK_THAT(ended.output,
               Contains("price of board NB-520 on 2026-10-15: 0.424 a m2, of 520 g") && Contains("boards.yaml:"));
    CHECK_THAT(quote_demo({demo_request("R-1014")}, {"--explain", "mass_kg.loss.corrugator-run@600"}).output,
               Contains("run_waste of Northlea Sheets"));
}

TEST_CASE("the price of a bought board moves by its path, and is ranked among the numbers behind a price") {
    const Json what_if = Json::parse(
        quote_demo({demo_request("R-1014")}, {"--with", "boards.NB-520.bought.price=+5%", "--json"}).output);
    CHECK_THAT(what_if.dump(), Contains("boards.NB-520.bought.price") && Contains("bought from Northlea Sheets > FG1"));
    const Ended ranked = quote_demo({demo_request("R-1014")}, {"--rank", "600"});
    INFO(ranked.errors);
    CHECK_THAT(ranked.output, Contains("boards.NB-520.bought.price[2026-09-01].per_m2") &&
                                  Contains("boards.NB-520.bought.waste") && Contains("boards.NB-520.bought.grammage"));
}

TEST_CASE("a way that a bought board does not have is refused with what it has") {
    const auto refusal = [](const std::string& request, const std::vector<std::string>& way) {
        const Ended ended = quote_demo({demo_request(request)}, way);
        CHECK(ended.exit_code == 1);
        return ended.output + ended.errors;
    };
    CHECK_THAT(refusal("R-1014", {"--corrugator", "C1"}),
               Contains("board NB-520 is bought from Northlea Sheets: no corrugator runs it"));
    CHECK_THAT(refusal("R-1014", {"--roll", "2050"}),
               Contains("board NB-520 is bought as sheets in the size wanted: it runs on no roll"));
    CHECK_THAT(refusal("R-1001", {"--corrugator", "Northlea Sheets"}),
               Contains("it does not deliver board B-140, which is made here"));
    CHECK(quote_demo({demo_request("R-1014")}, {"--corrugator", "Northlea Sheets", "--ups", "1"}).exit_code == 0);
    CHECK_THAT(refusal("R-1014", {"--ups", "4"}), Contains("4 up"));
}

TEST_CASE("a share of trim has no effect on sheets that are bought, and a warning says so") {
    PlantCopy plant;
    const std::string plain = plant.write("N-1.yaml", of_sheets);
    const std::string shared = plant.write("N-2.yaml", of_sheets + "trim: {share: 0.03, changes: 0.5}\n");
    const Json alone = request_of(ask_at(plant.folder(), {"quote", plain, "--json"}));
    const Json with_share = request_of(ask_at(plant.folder(), {"quote", shared, "--json"}));
    CHECK(with_share["quotes"][0]["cost"] == alone["quotes"][0]["cost"]);
    CHECK_FALSE(with_share.contains("trim"));
    CHECK_THAT(with_share["warnings"].dump(), Contains("board `NB-520` is bought as sheets"));
}

TEST_CASE("a bought board is found among all boards where it is the cheapest that holds") {
    PlantCopy plant;
    plant.replace("boards.yaml", "per_m2: 0.424}]}}", "per_m2: 0.24}]}, ect: 6}");
    plant.replace("boards.yaml", "paper: SC127}, TL125]}\n\n  C-125", "paper: SC127}, TL125], ect: 5}\n\n  C-125");
    const std::string file = plant.write("N-1.yaml", plain_request("N-1", "500"));
    const Ended ended = ask_at(plant.folder(), {"quote", file, "--board", "any", "--ect", "4.5"});
    INFO(ended.errors);
    CHECK(ended.exit_code == 0);
    CHECK_THAT(ended.output, Contains("500 boxes: NB-520"));
}

TEST_CASE("a saved quote on a bought board is shown as it was, and costs the same again") {
    const SavedBoxes plant;
    CHECK_THAT(plant.ask({"quote", "show", "Q000001"}).output,
               Contains("bought from Northlea Sheets") && Contains("board at prices of 2026-10-15"));
    const Json again = Json::parse(plant.ask({"quote", "recheck", "Q000001", "--json"}).output);
    CHECK(again["saved_files"]["ends"] == "to-the-byte");
}

TEST_CASE("an order on a bought board is taken, and none of its rows is posted: its sheets are not in the ledger") {
    SavedBoxes plant;
    const Ended taken = plant.ask({"order", "Q000001", "600", "--as", "26-7"});
    CHECK(taken.exit_code == 0);
    CHECK_THAT(taken.output, Contains("by sheets bought from Northlea Sheets > FG1"));
    const std::string rows = plant.write("runs.csv",
                                         "ref,date,shift,converter,order,fed,setup_sheets,rejected,good_boxes\n"
                                         "R1,2026-10-20,early,FG1,26-7,650,40,8,602\n");
    const Ended posted = plant.ask({"post", rows});
    CHECK(posted.exit_code == 1);
    CHECK_THAT(posted.output + posted.errors,
               Contains("runs.csv:2: order: found `26-7`, whose board `NB-520` is bought "
                        "from Northlea Sheets: sheets that are bought are not kept in "
                        "the ledger; leave the order's rows out"));
    const Ended cost = plant.ask({"order", "cost", "26-7"});
    CHECK(cost.exit_code == 1);
    CHECK_THAT(cost.errors, Contains("cannot be costed as made") && Contains("`flutebook quote show Q000001`"));
}

TEST_CASE("an offer on a bought board does not tell the customer who delivers it") {
    PlantCopy plant;
    const std::string file = plant.folder() + "/offer.html";
    REQUIRE(ask_at(plant.folder(), {"quote", demo_request("R-1014"), "--offer", file}).exit_code == 0);
    std::ostringstream read;
    read << std::ifstream(file, std::ios::binary).rdbuf();
    const std::string text = read.str();
    CHECK_THAT(text, Contains("B flute, 520 g/m2"));
    CHECK_THAT(text, !Contains("Northlea"));
}

TEST_CASE("each piece of a set on a bought board is bought") {
    const Ended ended = ask_at(demo_plant(), {"quote", "0300 400x300x100 NB-520 500 20%"});
    INFO(ended.errors);
    CHECK_THAT(ended.output, Contains("body bought from Northlea Sheets") && Contains("lid bought from Northlea"));
}
