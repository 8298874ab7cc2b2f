// A month's masses: every account from its opening to its close.
#include <catch2/catch.hpp>

#include "tests/unit/month/month_bench.hpp"

using namespace flutebook;
using namespace flutebook::fixture;

namespace {

// 1000 kg of paper and 20 of adhesive; 900 kg to the floor, 100 lost; FG1 makes 700 of 800.
void post_a_month(MonthBench& bench) {
    bench.paper("C1", "KL140", 600, 390);
    bench.paper("C1", "SC127", 400, 200);
    bench.adhesive("C1", 20, 12);
    bench.move("C1", "floor", "KL140", 540);
    bench.move("C1", "floor", "SC127", 342);
    bench.move("C1", "floor", "adhesive", 18);
    bench.lose("C1", "KL140", "side-trim", 60);
    bench.lose("C1", "SC127", "side-trim", 38);
    bench.lose("C1", "adhesive", "side-trim", 2);
    bench.move("floor", "FG1", "board", 800);
    bench.lose("FG1", "board", "cut-out", 70);
    bench.lose("FG1", "board", "rejects", 30);
    bench.move("FG1", "finished", "board", 700);
}

}  // namespace

TEST_CASE("a month accounts for every gram: paper and adhesive became product, losses, unexplained and stock") {
    MonthBench bench;
    post_a_month(bench);
    const auto account = bench.account();
    CHECK(account.issued == Grams::of(1000000));
    CHECK(account.adhesive == Grams::of(20000));
    CHECK(account.product == Grams::of(700000));
    CHECK(account.lost() == Grams::of(200000));
    CHECK(lost_kg(account, "side-trim") == 100);
    CHECK(centre(account, "C1").unexplained() == Grams::of(20000));
    CHECK(centre(account, "FG1").unexplained() == Grams());
    CHECK(account.floor.close == Grams::of(100000));
    CHECK(account.loose_scrap.in == Grams::of(200000));
    CHECK(balances(account));
}

TEST_CASE("a machine that nobody counted on the last day stands empty, a counted one holds what was found") {
    MonthBench bench;
    post_a_month(bench);
    bench.day = 30;
    bench.count("C1", "KL140", 500);  // a day early: no matter
    CHECK(centre(bench.account(), "C1").close == Grams());
    bench.day = 31;
    bench.count("C1", "KL140", 15);
    const auto account = bench.account();
    CHECK(centre(account, "C1").close == Grams::of(15000));
    CHECK(centre(account, "C1").unexplained() == Grams::of(5000));
    bench.month = month_of(2026, 11);
    bench.day = 3;
    bench.lose("C1", "KL140", "side-trim", 12);
    CHECK(centre(bench.account(), "C1").open == Grams::of(15000));
    CHECK(centre(bench.account(), "C1").unexplained() == Grams::of(3000));
}

TEST_CASE("the floor keeps its books where nobody counted, and each count is measured against the one before") {
    MonthBench bench;
    bench.day = 1;
    bench.move("C1", "floor", "KL140", 500);
    bench.day = 10;
    bench.count("floor", "board", 490);  // 10 short
    bench.day = 12;
    bench.move("floor", "FG1", "board", 200);
    bench.move("FG1", "finished", "board", 200);
    bench.day = 20;
    bench.count("floor", "board", 294);  // the books say 290 by now
    bench.day = 25;
    bench.move("floor", "FG1", "board", 94);
    const auto account = bench.account();
    CHECK(account.floor.counted == Grams::of(-6000));
    CHECK(account.floor.close == Grams::of(200000));
    CHECK(account.floor.open + account.floor.made - account.floor.fed + account.floor.counted == account.floor.close);
    CHECK(balances(account));
}

TEST_CASE("of two counts of one day the later posted one stands, and a reversed one does not") {
    MonthBench bench;
    bench.day = 31;
    bench.move("C1", "floor", "KL140", 500);
    bench.count("floor", "board", 400);
    const auto wrong = bench.count("floor", "board", 510);
    CHECK(bench.account().floor.counted == Grams::of(10000));
    static_cast<void>(services::reverse(bench.store, {wrong, "read from the wrong sheet", "mara", std::nullopt}));
    CHECK(bench.account().floor.counted == Grams::of(-100000));
}

TEST_CASE("a count that opens an account is opening stock, not a find") {
    MonthBench bench;
    bench.day = 1;
    bench.open("floor", "board", 250, 150);
    bench.open("C1", "KL140", 80, 52);
    bench.open("loose-scrap", "scrap", 40, 0);
    const auto account = bench.account();
    CHECK(account.floor.open == Grams::of(250000));
    CHECK(account.floor.counted == Grams());
    CHECK(account.loose_scrap.open == Grams::of(40000));
    CHECK(account.opening_stock() == Grams::of(330000));
    CHECK(account.opening_cost == Money::of(202, 1));
    CHECK(balances(account));
}

TEST_CASE("product is what reached finished goods, less what came back as scrap") {
    MonthBench bench;
    bench.paper("C1", "KL140", 100, 65);
    bench.move("C1", "finished", "KL140", 100);
    bench.lose("finished", "board", "returns", 10);
    bench.lose("floor", "board", "damage", 4);
    const auto account = bench.account();
    CHECK(account.product == Grams::of(90000));
    CHECK(lost_kg(account, "returns") == 10);
    CHECK(account.floor.lost == Grams::of(4000));
    CHECK(account.floor.close == Grams::of(-4000));
    CHECK(balances(account));
}

TEST_CASE("scrap is followed from the machine to the mill, and its stocks are apart from production's unexplained") {
    MonthBench bench;
    post_a_month(bench);
    bench.move("loose-scrap", "bale-yard", "4.01.00", 150);
    bench.move("bale-yard", "mill:Northweir", "4.01.00", 120);
    bench.move("mill:Northweir", "revenue", "4.01.00", 118, 10.03);
    bench.day = 31;
    bench.count("loose-scrap", "scrap", 47);
    const auto account = bench.account();
    CHECK(account.loose_scrap.counted == Grams::of(-3000));
    CHECK(account.loose_scrap.close == Grams::of(47000));
    CHECK(account.bale_yard.close == Grams::of(30000));
    CHECK(account.sent == Grams::of(120000));
    CHECK(account.paid == Grams::of(118000));
    CHECK(account.revenue == Money::of(10.03, 1));
    CHECK(account.recycling_rate() == Approx(0.6));
    CHECK(account.unexplained() == Grams::of(20000));
    CHECK(balances(account));
}

TEST_CASE("a month in which no scrap was made has no recycling rate") {
    MonthBench bench;
    bench.move("bale-yard", "mill:Northweir", "4.01.00", 120);
    CHECK_FALSE(bench.account().recycling_rate());
}

TEST_CASE("an entry and its reversal leave no trace in the account") {
    MonthBench bench;
    post_a_month(bench);
    const auto before = told(bench.account());
    const auto wrong = bench.move("floor", "FG1", "board", 77);
    CHECK(told(bench.account()) != before);
    static_cast<void>(services::reverse(bench.store, {wrong, "posted twice", "mara", std::nullopt}));
    CHECK(told(bench.account()) == before);
}

TEST_CASE("a month in which nothing was posted leaves all stocks as they were") {
    MonthBench bench;
    post_a_month(bench);
    bench.day = 31;
    bench.count("C1", "KL140", 15);
    const auto still = bench.account(month_of(2026, 12));
    CHECK(centre(still, "C1").close == Grams::of(15000));
    CHECK(still.floor.close == Grams::of(100000));
    CHECK(still.unexplained() == Grams());
    CHECK(balances(still));
}

TEST_CASE("what no document moves is refused by name, not left out") {
    MonthBench bench;
    bench.move("finished", "floor", "board", 5);
    CHECK_THROWS_WITH(bench.account(),
                      "month 2026-10: no document moves anything from finished to floor: found 5 kg of "
                      "board; run `flutebook verify`");
}
