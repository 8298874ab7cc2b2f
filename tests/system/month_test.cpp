// The ledger's commands as people and scripts meet them: a month, its parts and its files; close, reverse, verify,
// backup. The ledger is posted to directly, so that every figure is known.
#include <fmt/format.h>

#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>

#include "ledger/writing/posting.hpp"
#include "tests/system/face.hpp"

using namespace flutebook;
using namespace flutebook::fixture;
using Json = nlohmann::ordered_json;

namespace {

ledger::Movement movement(const std::string& from, const std::string& to, const std::string& material, int kg,
                          int amount = 0, const std::string& cause = "") {
    return {from, to, material, cause, Grams::of(kg * 1000LL), Money::of(amount, 1).value()};
}

ledger::Draft draft(const std::string& ref, unsigned day, const std::string& centre, const std::string& order,
                    std::vector<ledger::Movement> movements) {
    ledger::Draft result;
    result.kind = "row";
    result.ref = result.content = ref;
    result.date = std::chrono::year(2026) / std::chrono::month(9) / std::chrono::day(day);
    result.shift = "early";
    result.centre = centre;
    result.order = order;
    result.movements = std::move(movements);
    return result;
}

// September at the demo plant: 1000 kg of paper, 30 of it on nobody's list. An order's name is a formula.
class LedgerPlant : public PlantCopy {
public:
    LedgerPlant() {
        auto store = ledger::Store::open_for_writing(folder() + "/ledger.db", ledger::IfMissing::create);
        auto run = draft(
            "R1", 2, "C1", "=1+1",
            {movement("adhesive-store", "C1", "adhesive", 20, 12), movement("C1", "floor", "KL135", 850),
             movement("C1", "floor", "adhesive", 20), movement("C1", "loose-scrap", "KL135", 120, 0, "side-trim")});
        run.expected.push_back({"side-trim", Grams::of(100000)});
        auto count = draft("N1", 30, "C1", "", {});
        count.count = ledger::Count{"C1", "KL135", Grams(), std::nullopt};
        const std::vector<ledger::Draft> drafts = {
            draft("P1", 1, "C1", "", {movement("paper-store", "C1", "KL135", 1000, 650)}),
            run,
            draft("F1", 3, "FG1", "=1+1",
                  {movement("floor", "FG1", "board", 600), movement("FG1", "finished", "board", 560),
                   movement("FG1", "loose-scrap", "board", 40, 0, "rejects")}),
            draft("B1", 4, "loose-scrap", "", {movement("loose-scrap", "bale-yard", "4.01.00", 150)}),
            draft("T1", 5, "bale-yard", "",
                  {movement("bale-yard", "mill:Northweir", "4.01.00", 120),
                   movement("mill:Northweir", "revenue", "4.01.00", 118, 10)}),
            count};
        static_cast<void>(ledger::post(store, drafts, "mara"));
    }

    [[nodiscard]] Ended ask(const std::vector<std::string>& words) const { return ask_at(folder(), words); }

    // October runs: September is over, whatever the clock of the machine that tests.
    void run_october() const {
        auto store = ledger::Store::open_for_writing(folder() + "/ledger.db", ledger::IfMissing::refuse);
        auto paper = draft("P9", 1, "C1", "", {movement("paper-store", "C1", "KL135", 1, 1)});
        paper.date = std::chrono::year(2026) / 10 / 1;
        static_cast<void>(ledger::post(store, std::vector{paper}, "mara"));
    }
};

Json parsed(const Ended& ended) {
    REQUIRE(ended.exit_code == 0);
    return Json::parse(ended.output);
}

std::string bytes_of(const std::string& file) {
    std::ifstream in(file, std::ios::binary);
    std::ostringstream text;
    text << in.rdbuf();
    return text.str();
}

std::string option(const std::string& file) {
    return file.find(".html") == std::string::npos ? "--export" : "--html";
}

}  // namespace

TEST_CASE("a month in JSON has the documented keys, in kg and money, and both balances close") {
    const LedgerPlant plant;
    const auto month = parsed(plant.ask({"month", "2026-09", "--json"}));
    std::vector<std::string> keys;
    for (const auto& member : month.items()) keys.push_back(member.key());
    CHECK(keys == std::vector<std::string>{"answer",
                                           "answer_version",
                                           "month",
                                           "issued_kg",
                                           "adhesive_kg",
                                           "product_kg",
                                           "loss_kg",
                                           "expected_kg",
                                           "unexplained_kg",
                                           "centre_kg",
                                           "floor_kg",
                                           "loose_scrap_kg",
                                           "bale_yard_kg",
                                           "sent_kg",
                                           "paid_kg",
                                           "revenue",
                                           "waste_cost",
                                           "excess_value",
                                           "scrap_value_per_kg",
                                           "product_cost",
                                           "floor_cost",
                                           "recycling_rate",
                                           "corrections",
                                           "close_waits_for",
                                           "losses_quoted_by",
                                           "trim"});
    CHECK(month["loss_kg"] == Json({{"rejects", 40.0}, {"side-trim", 120.0}}));
    CHECK(month["expected_kg"]["side-trim"] == 100.0);
    CHECK(month["unexplained_kg"] == Json({{"C1", 30.0}, {"FG1", 0.0}, {"floor", 0.0}}));
    CHECK(month["centre_kg"]["C1"] == Json({{"open", 0.0}, {"in", 1020.0}, {"out", 990.0}, {"close", 0.0}}));
    CHECK(
        month["floor_kg"] ==
        Json({{"open", 0.0}, {"made", 870.0}, {"fed", 600.0}, {"returned", 0.0}, {"counted", 0.0}, {"close", 270.0}}));
    CHECK(month["loose_scrap_kg"]["close"] == 10.0);
    CHECK(month["bale_yard_kg"]["close"] == 30.0);
    CHECK(month["recycling_rate"] == 0.75);
    CHECK(month["revenue"] == 10.0);
    double cost = month["product_cost"].get<double>() + month["floor_cost"]["close"].get<double>();
    for (const auto& cause : month["waste_cost"].items()) cost += cause.value().get<double>();
    CHECK(cost == Approx(662).margin(1e-9));
}

TEST_CASE("a month on a page fits 100 columns and names the base of its shares") {
    const LedgerPlant plant;
    const auto page = plant.ask({"month", "2026-09", "--by", "order"});
    REQUIRE(page.exit_code == 0);
    std::istringstream lines(page.output);
    for (std::string line; std::getline(lines, line);) CHECK(line.size() <= 100);
    for (const auto* said : {"of paper issued, 28.57 % of product", "total accounted for",
                             "Unexplained is 3.00 % of paper issued, above the tolerance of 0.50 %",
                             "shares of the total, which is the same on both sides", "=1+1", "recycling rate",
                             "Twelve months", "2026-09, open"}) {
        CAPTURE(said);
        CHECK(page.output.find(said) != std::string::npos);
    }
}

TEST_CASE("a month says in whole sentences what is unexplained beside which tolerance, as text and as a page") {
    const LedgerPlant plant;
    const auto page = plant.folder() + "/month.html";
    REQUIRE(plant.ask({"month", "2026-09", "--html", page}).exit_code == 0);
    for (const auto& text : {plant.ask({"month", "2026-09"}).output, bytes_of(page)}) {
        for (const auto* said : {"Unexplained is 3.00 % of paper issued, above the tolerance of 0.50 %.",
                                 "Full cost is the cost of the actual loss after ISO 14051.",
                                 "idle: cost of centres without production or losses", "scrap sent, of scrap made"}) {
            CAPTURE(said);
            CHECK(text.find(said) != std::string::npos);
        }
        for (const auto* unsaid : {"may be", "none of issued", "nobody", "this machine"}) {
            CAPTURE(unsaid);
            CHECK(text.find(unsaid) == std::string::npos);
        }
    }
    CHECK(plant.ask({"month", "2026-08"}).output.find("No paper was issued, so that no mass may stay unexplained.") !=
          std::string::npos);
    CHECK(plant.ask({"close", "2026-09"})
              .errors.find(
                  "3.00 % of paper issued, above the tolerance of 0.50 %; post what is missing, or give the reason by "
                  "--why") != std::string::npos);
}

TEST_CASE("the shares of a month's balance add up to 100 % of its total, and its rate of waste is of issued paper") {
    const LedgerPlant plant;
    const auto page = plant.ask({"month", "2026-09", "--by", "order"}).output;
    // 1000 and 20 of 1020; 560, 160, 30 and 270 of 1020: each rounded down, then one more to the largest remainders.
    for (const auto* share : {"98.04 %", "1.96 %", "54.90 %", "15.69 %", "2.94 %", "26.47 %", "100.00 %"}) {
        CAPTURE(share);
        CHECK(page.find(share) != std::string::npos);
    }
    CHECK(page.find("waste 16.00 % of paper issued, 28.57 % of product") != std::string::npos);
    CHECK(page.find("Weighed causes, such as roll-ends, are recorded by machine and shift, not by order") !=
          std::string::npos);
    CHECK(plant.ask({"month", "2026-09", "--by", "shift"}).output.find("Weighed causes") == std::string::npos);
}

TEST_CASE("the unexplained loss, idle and corrections are shown beside the total of waste, not in it") {
    const LedgerPlant plant;
    const auto month = parsed(plant.ask({"month", "2026-09", "--json"}));
    double causes = 0;
    for (const auto& cause : month["waste_cost"].items())
        if (month["loss_kg"].contains(cause.key())) causes += cause.value().get<double>();
    CHECK(month["waste_cost"].contains("corrections"));
    const auto csv = plant.folder() + "/month.csv";
    REQUIRE(plant.ask({"month", "2026-09", "--export", csv}).exit_code == 0);
    const auto rows = bytes_of(csv);
    const auto at = rows.find("\"losses of all causes\"");
    REQUIRE(at != std::string::npos);
    CHECK(std::stod(rows.substr(rows.rfind(',', rows.find("\r\n", at)) + 1)) == Approx(causes));
}

TEST_CASE("a month divided by machine, shift, board or order has its parts in JSON") {
    const LedgerPlant plant;
    for (const auto* by : {"machine", "shift", "board", "order"}) {
        const auto month = parsed(plant.ask({"month", "2026-09", "--by", by, "--json"}));
        CHECK(month["by"] == by);
        double lost = 0;
        for (const auto& part : month["parts"])
            for (const auto& cause : part["loss_kg"].items()) lost += cause.value().get<double>();
        CHECK(lost == 160.0);
    }
    const auto wrong = plant.ask({"month", "2026-09", "--by", "colour"});
    CHECK(wrong.exit_code == 2);
}

TEST_CASE("a month goes into a file that no spreadsheet takes for a formula, the same bytes each time") {
    const LedgerPlant plant;
    for (const auto* name : {"/month.csv", "/month.xlsx"}) {
        const auto file = plant.folder() + name;
        REQUIRE(plant.ask({"month", "2026-09", "--by", "order", "--export", file}).exit_code == 0);
        const auto first = bytes_of(file);
        REQUIRE(plant.ask({"month", "2026-09", "--by", "order", "--export", file, "--replace"}).exit_code == 0);
        CHECK(bytes_of(file) == first);
        CHECK_FALSE(std::filesystem::exists(file + ".part"));
    }
    const auto csv = bytes_of(plant.folder() + "/month.csv");
    CHECK(csv.find("\"2026-09\",\"by order\",\"'=1+1\",\"lost kg\",160\r\n") != std::string::npos);
    CHECK(csv.find("\"=") == std::string::npos);
    CHECK(bytes_of(plant.folder() + "/month.xlsx").substr(0, 2) == "PK");
    CHECK(plant.ask({"month", "2026-09", "--export", "month.doc"}).exit_code == 2);
}

TEST_CASE("a month in HTML has the figures of its page, and its export the same labels") {
    const LedgerPlant plant;
    const auto html = plant.folder() + "/month.html", csv = plant.folder() + "/month.csv";
    const auto page = plant.ask({"month", "2026-09", "--by", "order"});
    const auto written = plant.ask({"month", "2026-09", "--by", "order", "--export", csv, "--html", html});
    REQUIRE(written.exit_code == 0);
    CHECK(written.output.empty());
    const auto text = bytes_of(html);
    for (const auto* label :
         {"stock of machines and floor, opening", "total accounted for", "recycling rate of the month"}) {
        CAPTURE(label);
        CHECK(page.output.find(label) != std::string::npos);
        CHECK(text.find(label) != std::string::npos);
        CHECK(bytes_of(csv).find(label) != std::string::npos);
    }
    CHECK(text.find("160.000") != std::string::npos);
    CHECK(text.find("=1+1") != std::string::npos);
}

TEST_CASE("a month that cannot be written to its file is refused in one line") {
    const LedgerPlant plant;
    for (const auto* name : {"/none/month.csv", "/none/month.xlsx", "/none/month.html"}) {
        const auto nowhere = plant.ask({"month", "2026-09", option(name), plant.folder() + name});
        CHECK(nowhere.exit_code == 1);
        CHECK(nowhere.output.empty());
        CHECK(lines_of(nowhere.errors).size() == 1);
    }
}

TEST_CASE("a month that does not balance is closed with a reason only, and its head proves the ledger later") {
    const LedgerPlant plant;
    plant.run_october();
    const auto refused = plant.ask({"close", "2026-09"});
    CHECK(refused.exit_code == 1);
    CHECK(refused.errors.find("2026-09 does not balance: found 30.000 kg unexplained, 3.00 % of paper issued") !=
          std::string::npos);
    const auto closed = parsed(plant.ask({"close", "2026-09", "--why", "a roll was sold as it was", "--json"}));
    CHECK(closed["balances"] == false);
    const auto head = closed["head"].get<std::string>();
    CHECK(plant.ask({"month", "2026-09"}).output.find("2026-09, closed") != std::string::npos);
    const auto proof = parsed(plant.ask({"verify", "--head", head, "--json"}));
    CHECK(proof["holds"] == true);
    CHECK(proof["kept_at"] == closed["entry"]);
    const auto other = plant.ask({"verify", "--head", std::string(64, 'a')});
    CHECK(other.exit_code == 1);
    CHECK_FALSE(other.errors.empty());
    CHECK(plant.ask({"close", "2026-09"}).exit_code == 1);
}

TEST_CASE("a month far ahead is not closed, and an open month lists what its close waits for") {
    const LedgerPlant plant;
    plant.run_october();
    const auto far = plant.ask({"close", "2072-12", "--why", "a slip of the keyboard"});
    CHECK(far.exit_code == 1);
    CHECK(far.errors.find("2026-09 is still open; close it before 2072-12") != std::string::npos);
    const auto page = plant.ask({"month", "2072-12"});
    CHECK(page.output.find("What the close of this month waits for") != std::string::npos);
    CHECK(page.output.find("2072-12 is not over") != std::string::npos);
    const auto waits = parsed(plant.ask({"month", "2072-12", "--json"}))["close_waits_for"];
    CHECK(waits.size() >= 3);  // not over, an open month before it, months without a row
    CHECK(parsed(plant.ask({"month", "2026-09", "--json"}))["close_waits_for"] == Json::array());
}

TEST_CASE("an entry is reversed once, with a reason") {
    const LedgerPlant plant;
    CHECK(plant.ask({"reverse", "3"}).exit_code == 2);
    const auto reversed = parsed(plant.ask({"reverse", "3", "--why", "counted twice", "--json"}));
    CHECK(reversed["reverses"] == 3);
    CHECK(reversed["date"] == "2026-09-03");
    CHECK(parsed(plant.ask({"month", "2026-09", "--json"}))["product_kg"] == 0.0);
    CHECK(plant.ask({"reverse", "3", "--why", "counted twice"}).exit_code == 1);
    CHECK(plant.ask({"reverse", "99", "--why", "no such entry"}).exit_code == 1);
    CHECK(plant.ask({"reverse", "x", "--why", "no such ref"}).exit_code == 1);
    const auto corrections = parsed(plant.ask({"month", "2026-09", "--json"}))["corrections"];
    REQUIRE(corrections.size() == 1);
    CHECK(corrections[0]["ref"] == "F1");
    CHECK(corrections[0]["reverses"] == "2026-09-03");
    CHECK(corrections[0]["note"] == "counted twice");
    CHECK(plant.ask({"month", "2026-09"}).output.find("counted twice") != std::string::npos);
}

TEST_CASE("a copy of the ledger is a ledger, and takes no file's place") {
    const LedgerPlant plant;
    const auto copy = plant.folder() + "/copy.db";
    CHECK(parsed(plant.ask({"backup", copy, "--json"}))["holds"] == true);
    CHECK(plant.ask({"backup", copy}).exit_code == 1);
    const auto item = plant.ask({"month", "2026-09", "--json"});
    CHECK(plant.ask({"--ledger", copy, "month", "2026-09", "--json"}).output == item.output);
}

TEST_CASE("where no ledger is, reading one says so and makes none") {
    const PlantCopy plant;
    for (const std::vector<std::string>& words :
         {std::vector<std::string>{"month", "2026-09"}, {"close", "2026-09"}, {"verify"}, {"backup", "x.db"}}) {
        const auto ended = ask_at(plant.folder(), words);
        CHECK(ended.exit_code == 1);
        CHECK(ended.errors.find("there is no such ledger") != std::string::npos);
    }
    CHECK_FALSE(std::filesystem::exists(plant.folder() + "/ledger.db"));
    CHECK(ask_at(plant.folder(), {"month", "2026-13"}).exit_code == 2);
}
