// Cost that no row of the month's own bears, and excess in cash: each case small enough to work out on paper.
#include <catch2/catch.hpp>

#include "host/month/excess.hpp"
#include "tests/unit/month/month_bench.hpp"

using namespace flutebook;
using namespace flutebook::fixture;

namespace {

void reverse(MonthBench& bench, std::int64_t entry) {
    const auto day = bench.month / std::chrono::day(20);
    static_cast<void>(services::reverse(bench.store, {entry, "posted twice", "mara", day}));
}

answers::MonthAnswer answer_of(MonthBench& bench) {
    return services::month(bench.plant, bench.store,
                           {bench.month, std::nullopt, services::MonthOptions::Trend::none, bench.today});
}

double excess_of(const answers::MonthAnswer& answer, const std::string& name) {
    for (const auto& cause : answer.account.causes)
        if (cause.cause == name) return month::excess_value(answer.account, cause, answer.scrap).to_double();
    FAIL("no cause " << name);
    return 0;
}

}  // namespace

TEST_CASE("a centre without a row of its own leaves its energy and system cost to idle, whatever it holds or misses") {
    MonthBench bench;
    bench.day = 1;
    bench.open("C1", "KL140", 100, 50);
    bench.open("FG1", "board", 10, 6);
    bench.day = 5;
    bench.lose("C1", "paper", "roll-ends", 2);  // weighed: no row of its own
    bench.cost("C1", "energy", 30);
    bench.cost("C1", "system", 20);
    bench.cost("FG1", "system", 8);
    const auto account = bench.account();
    CHECK(account.idle_cost.to_double() == 58);
    CHECK(waste_cost(account, "roll-ends") == 1);           // 2 kg at 0.5
    CHECK(account.unexplained_cost.to_double() == 49 + 6);  // 98 kg of paper at 0.5, 10 kg of board at 0.6
    CHECK(account.corrections_cost == Money());
    CHECK(balances(account));
}

TEST_CASE("a converter's cost goes over the kilograms of its own rows, and a correction is given back at that rate") {
    MonthBench bench;
    bench.month = month_of(2026, 9);
    bench.paper("C1", "KL140", 900, 900);
    bench.move("C1", "floor", "KL140", 900);
    bench.move("floor", "FG1", "board", 400);
    bench.move("FG1", "finished", "board", 400);
    const auto fed = bench.move("floor", "FG1", "board", 100);
    const auto finished = bench.move("FG1", "finished", "board", 100);
    static_cast<void>(bench.close());

    bench.month = month_of(2026, 10);  // 400 kg on the floor at 1
    bench.move("floor", "FG1", "board", 200);
    bench.move("FG1", "finished", "board", 190);
    bench.lose("FG1", "board", "rejects", 10);
    bench.cost("FG1", "system", 60);
    reverse(bench, fed);
    reverse(bench, finished);
    const auto account = bench.account();
    // 60 / 200 = 0.3 a kg, not 60 / (200 - 100); 90 kg of product and 10 of rejects bear 30, 30 are left.
    CHECK(waste_cost(account, "rejects") == 13);
    CHECK(account.product_cost.to_double() == 117);
    CHECK(account.corrections_cost.to_double() == 30);
    CHECK(account.idle_cost == Money());
    CHECK(account.floor.close_cost.to_double() == 300);
    CHECK(account.waste_cost().to_double() == 13);
    CHECK(balances(account));
}

TEST_CASE("a correction that nets next to nothing never carries a month's cost") {
    MonthBench bench;
    bench.month = month_of(2026, 9);
    bench.paper("C1", "KL140", 1000, 1000);
    bench.move("C1", "floor", "KL140", 1000);
    const auto fed = bench.move("floor", "FG1", "board", 300);
    const auto finished = bench.move("FG1", "finished", "board", 300);
    static_cast<void>(bench.close());

    bench.month = month_of(2026, 10);
    bench.move("floor", "FG1", "board", 310);
    bench.move("FG1", "finished", "board", 301);
    bench.lose("FG1", "board", "rejects", 9);
    bench.cost("FG1", "system", 620);
    reverse(bench, fed);
    reverse(bench, finished);
    const auto account = bench.account();
    // 620 / 310 = 2 a kg; over the 10 kg that are left it would be 62, and rejects 567.
    CHECK(waste_cost(account, "rejects") == 27);
    CHECK(account.corrections_cost.to_double() == 600);
    CHECK(balances(account));
}

TEST_CASE("a centre whose only rows are reversals of earlier months has no row of its own") {
    MonthBench bench;
    bench.month = month_of(2026, 9);
    bench.paper("C1", "KL140", 100, 100);
    bench.move("C1", "floor", "KL140", 100);
    const auto fed = bench.move("floor", "FG1", "board", 40);
    const auto finished = bench.move("FG1", "finished", "board", 40);
    static_cast<void>(bench.close());
    bench.month = month_of(2026, 10);
    reverse(bench, fed);
    reverse(bench, finished);
    bench.cost("FG1", "system", 60);
    const auto account = bench.account();
    CHECK(account.idle_cost.to_double() == 60);
    CHECK(account.corrections_cost == Money());
    CHECK(account.product_cost.to_double() == -40);
    CHECK(account.floor.close_cost.to_double() == 100);
    CHECK(balances(account));
}

TEST_CASE("a corrugator's cost goes over what left by its own rows, unexplained included") {
    MonthBench bench;
    bench.month = month_of(2026, 9);
    const auto issued = bench.paper("C1", "KL140", 90, 90);
    bench.paper("C1", "KL140", 910, 910);
    bench.move("C1", "finished", "KL140", 1000);
    static_cast<void>(bench.close());
    bench.month = month_of(2026, 10);
    bench.paper("C1", "KL140", 500, 500);
    bench.move("C1", "finished", "KL140", 440);
    bench.lose("C1", "KL140", "side-trim", 50);
    bench.cost("C1", "energy", 50);
    reverse(bench, issued);
    const auto account = bench.account();
    // 50 / 500 = 0.1 a kg: product 440 x 1.1, side-trim 50 x 1.1, unexplained -80 x 1.1, and 9 of 50 are not borne.
    CHECK(account.product_cost.to_double() == Approx(484));
    CHECK(waste_cost(account, "side-trim") == Approx(55));
    CHECK(account.unexplained_cost.to_double() == Approx(-88));
    CHECK(account.corrections_cost.to_double() == Approx(9));
    CHECK(balances(account));
}

TEST_CASE("excess is worth the paper, adhesive and energy in it, less what scrap brought net of its handling") {
    MonthBench bench;
    bench.paper("C1", "KL140", 100, 100);
    bench.move("C1", "floor", "KL140", 100);
    bench.cost("C1", "energy", 10);
    bench.cost("C1", "system", 20);  // on the floor: 1.1 in cash and 0.2 of system cost a kg
    static_cast<void>(bench.close());

    bench.month = month_of(2026, 11);
    bench.move("floor", "FG1", "board", 50);
    bench.cost("FG1", "energy", 5);
    bench.cost("FG1", "system", 10);  // 1.2 and 0.4
    bench.move("FG1", "finished", "board", 40);
    bench.lose("FG1", "board", "rejects", 10);
    bench.expect("FG1", "rejects", 4);
    bench.expect("FG1", "setup", 2);
    bench.move("loose-scrap", "bale-yard", "4.01.00", 9);
    bench.move("bale-yard", "mill:Northweir", "4.01.00", 8);
    bench.move("mill:Northweir", "revenue", "4.01.00", 8, 0.8);  // 0.1 a kg
    bench.cost("loose-scrap", "waste-management", 0.5);          // 0.05 a kg of the 10 made
    bench.cost("loose-scrap", "system", 1);                      // as much, however little is baled
    const auto answer = answer_of(bench);
    CHECK(answer.scrap.per_kg == Approx(0.05));
    CHECK(excess_of(answer, "rejects") == Approx(6 * (1.2 - 0.05)));
    CHECK(excess_of(answer, "setup") == Approx(-2 * (1.2 - 0.05)));  // nothing lost: at the cash in all losses
    CHECK(month::excess_value(answer.account, answer.scrap).to_double() == Approx(4 * 1.15));
    // The actual loss has its full cost: carried, and the baler's.
    CHECK(waste_cost(answer.account, "rejects") == Approx(10 * 1.6 + 1.5));
    CHECK(balances(answer.account));
}

TEST_CASE("where no scrap was sold in the month, excess is valued at what twelve months brought") {
    MonthBench bench;
    bench.paper("C1", "KL140", 100, 100);
    bench.move("C1", "finished", "KL140", 80);
    bench.lose("C1", "KL140", "side-trim", 20);
    bench.expect("C1", "side-trim", 10);
    auto answer = answer_of(bench);
    CHECK(answer.scrap.of == month::ScrapValue::Of::nothing);
    CHECK(excess_of(answer, "side-trim") == 10);
    bench.move("loose-scrap", "bale-yard", "4.01.00", 20);
    bench.move("bale-yard", "mill:Northweir", "4.01.00", 20);
    bench.move("mill:Northweir", "revenue", "4.01.00", 20, 4);
    bench.month = month_of(2026, 11);
    bench.paper("C1", "KL140", 10, 10);
    bench.lose("C1", "KL140", "side-trim", 10);
    answer = answer_of(bench);
    CHECK(answer.scrap.of == month::ScrapValue::Of::twelve_months);
    CHECK(answer.scrap.per_kg == Approx(0.2));
    CHECK(excess_of(answer, "side-trim") == Approx(10 * (1 - 0.2)));
}
