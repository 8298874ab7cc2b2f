// What a month's waste costs, each case small enough to work out on paper.
#include <catch2/catch.hpp>

#include "tests/unit/month/month_bench.hpp"

using namespace flutebook;
using namespace flutebook::fixture;

namespace {

double unexplained_cost(const month::MonthAccount& account) {
    return account.unexplained_cost.to_double();
}

}  // namespace

TEST_CASE("at a corrugator each material is traced at its own price, roll ends by the kg that were issued") {
    MonthBench bench;
    bench.paper("C1", "KL140", 300, 300);        // 1 a kg
    bench.paper("C1", "SC127", 100, 50);         // 0.5 a kg
    bench.adhesive("C1", 10, 20);                // 2 a kg
    bench.lose("C1", "paper", "roll-ends", 40);  // 30 of KL140, 10 of SC127
    bench.lose("C1", "KL140", "side-trim", 20);
    bench.lose("C1", "SC127", "side-trim", 5);
    bench.lose("C1", "adhesive", "side-trim", 1);
    bench.move("C1", "finished", "KL140", 250);
    bench.move("C1", "finished", "SC127", 85);
    bench.move("C1", "finished", "adhesive", 9);
    const auto account = bench.account();
    CHECK(waste_cost(account, "roll-ends") == 35);
    CHECK(waste_cost(account, "side-trim") == 24.5);
    CHECK(account.product_cost.to_double() == 310.5);
    CHECK(account.unexplained() == Grams());
    CHECK(balances(account));
}

TEST_CASE("opening stock is mixed with what the month took in, and closing stock is carried at the same cost") {
    MonthBench bench;
    bench.open("C1", "KL140", 100, 50);    // 0.5 a kg
    bench.paper("C1", "KL140", 100, 100);  // 1 a kg, so 0.75 together
    bench.move("C1", "finished", "KL140", 120);
    bench.day = 31;
    bench.count("C1", "KL140", 60);  // 20 kg nobody can explain
    const auto account = bench.account();
    CHECK(account.product_cost.to_double() == 90);
    CHECK(unexplained_cost(account) == 15);
    CHECK(account.closing_cost.to_double() == 45);
    CHECK(balances(account));
    bench.month = month_of(2026, 11);
    bench.day = 1;
    bench.move("C1", "finished", "KL140", 60);
    CHECK(bench.account().product_cost.to_double() == 45);
}

TEST_CASE("paper that ran where none came in is worth its price on the last day, and as much is unexplained") {
    MonthBench bench;
    bench.plant.papers[0].prices = {{std::chrono::year(2026) / 1 / 1, 600, {}},
                                    {std::chrono::year(2026) / 10 / 20, 800, {}}};
    REQUIRE(bench.plant.papers[0].code == "KL140");
    bench.move("C1", "finished", "KL140", 100);
    const auto account = bench.account();
    CHECK(account.product_cost.to_double() == 80);
    CHECK(unexplained_cost(account) == -80);
    CHECK(balances(account));
}

TEST_CASE("energy and system cost go by kg over all that left, waste management over the losses alone") {
    MonthBench bench;
    bench.paper("C1", "KL140", 1000, 0);
    bench.move("C1", "finished", "KL140", 800);
    bench.lose("C1", "KL140", "side-trim", 120);
    bench.lose("C1", "KL140", "order-change", 30);  // 50 kg unexplained
    bench.cost("C1", "energy", 60);
    bench.cost("C1", "system", 40);
    bench.cost("C1", "waste-management", 15);
    const auto account = bench.account();
    CHECK(account.product_cost.to_double() == 80);
    CHECK(waste_cost(account, "side-trim") == 24);  // 12 + 12
    CHECK(waste_cost(account, "order-change") == 6);
    CHECK(unexplained_cost(account) == 5);
    CHECK(balances(account));
}

TEST_CASE("behind the corrugator board has one average, and what leaves a machine carries the machine's cost too") {
    MonthBench bench;
    bench.day = 1;
    bench.open("floor", "board", 100, 40);
    bench.day = 2;
    bench.paper("C1", "KL140", 300, 160);
    bench.move("C1", "floor", "KL140", 300);  // average (40 + 160) / 400 = 0.5
    bench.move("floor", "FG1", "board", 200);
    bench.cost("FG1", "system", 20);  // 0.1 a kg
    bench.lose("FG1", "board", "rejects", 50);
    bench.move("FG1", "finished", "board", 150);
    bench.lose("floor", "board", "damage", 10);
    const auto account = bench.account();
    CHECK(account.product_cost.to_double() == 90);
    CHECK(waste_cost(account, "rejects") == 30);
    CHECK(waste_cost(account, "damage") == 5);
    CHECK(account.floor.close_cost.to_double() == 95);
    CHECK(account.floor.open_cost.to_double() == 40);
    CHECK(balances(account));
}

TEST_CASE("what comes back from one machine takes its cost along to the next") {
    MonthBench bench;
    bench.paper("C1", "KL140", 100, 100);
    bench.move("C1", "floor", "KL140", 100);
    bench.move("floor", "PR1", "board", 100);
    bench.cost("PR1", "system", 50);  // 0.5 a kg
    bench.move("PR1", "floor", "board", 100);
    bench.move("floor", "FG1", "board", 100);
    bench.move("FG1", "finished", "board", 100);
    const auto account = bench.account();
    // The average over the month: (100 + 50) / 100.
    CHECK(account.product_cost.to_double() == 150);
    CHECK(account.floor.close_cost == Money());
    CHECK(balances(account));
}

TEST_CASE(
    "stock that stands at a converter is worth what its intake cost, floor average and all, and goes on at that") {
    MonthBench bench;
    bench.paper("C1", "KL140", 1000, 1000);
    bench.move("C1", "floor", "KL140", 1000);
    bench.move("floor", "FG1", "board", 500);
    bench.cost("FG1", "system", 100);  // 0.2 a kg
    bench.move("FG1", "finished", "board", 400);
    bench.day = 31;
    bench.count("FG1", "board", 100);
    const auto account = bench.account();
    CHECK(account.product_cost.to_double() == 480);
    CHECK(account.closing_cost.to_double() == 500 + 120);
    CHECK(account.unexplained_cost == Money());
    CHECK(balances(account));
    static_cast<void>(bench.close());
    bench.month = month_of(2026, 11);
    bench.day = 2;
    bench.move("FG1", "finished", "board", 100);
    CHECK(bench.account().product_cost.to_double() == 120);
    CHECK(balances(bench.account()));
}

TEST_CASE("a count on the floor, and board that a converter lost track of, cost the average") {
    MonthBench bench;
    bench.paper("C1", "KL140", 100, 50);
    bench.move("C1", "floor", "KL140", 100);
    bench.move("floor", "FG1", "board", 40);
    bench.move("FG1", "finished", "board", 30);  // 10 kg unexplained
    bench.day = 31;
    bench.count("floor", "board", 54);  // 6 kg short
    const auto account = bench.account();
    CHECK(unexplained_cost(account) == 8);
    CHECK(account.floor.close_cost.to_double() == 27);
    CHECK(balances(account));
}

TEST_CASE("cost that finds no intake or no loss is idle") {
    MonthBench bench;
    bench.cost("C1", "energy", 10);
    bench.cost("FG1", "system", 5);
    bench.cost("FG1", "waste-management", 2);
    bench.cost("loose-scrap", "system", 3);
    auto account = bench.account();
    CHECK(account.idle_cost.to_double() == 20);
    CHECK(account.waste_cost() == Money());  // it stands beside
    CHECK(balances(account));
}

TEST_CASE("the baler's cost goes over all losses by kg") {
    MonthBench bench;
    bench.lose("C1", "KL140", "side-trim", 30);
    bench.lose("FG1", "board", "rejects", 10);
    bench.plant.papers.clear();
    bench.cost("loose-scrap", "energy", 8);
    const auto account = bench.account();
    CHECK(waste_cost(account, "side-trim") == 6);
    CHECK(waste_cost(account, "rejects") == 2);
}

TEST_CASE("what comes back from finished goods costs what the month's product cost") {
    MonthBench bench;
    bench.paper("C1", "KL140", 100, 60);
    bench.move("C1", "finished", "KL140", 100);
    bench.lose("finished", "board", "returns", 25);
    const auto account = bench.account();
    CHECK(waste_cost(account, "returns") == 15);
    CHECK(account.product_cost.to_double() == 45);
}

TEST_CASE("rounded costs add up to all the money that was spent") {
    MonthBench bench;
    bench.paper("C1", "KL140", 3, 1);
    bench.move("C1", "finished", "KL140", 1);
    bench.lose("C1", "KL140", "side-trim", 1);
    bench.lose("C1", "KL140", "damage", 1);
    const auto account = bench.account();
    CHECK(waste_cost(account, "side-trim") == Approx(0.3333).margin(0.00011));
    CHECK(account.product_cost + account.waste_cost() == Money::of(1, 1));
}

TEST_CASE("twice the money is twice the cost of every loss") {
    const auto of = [](double times) {
        MonthBench bench;
        bench.paper("C1", "KL140", 500, 300 * times);
        bench.move("C1", "floor", "KL140", 400);
        bench.lose("C1", "KL140", "side-trim", 90);
        bench.move("floor", "FG1", "board", 300);
        bench.cost("FG1", "system", 30 * times);
        bench.lose("FG1", "board", "rejects", 20);
        bench.move("FG1", "finished", "board", 280);
        return bench.account();
    };
    const auto once = of(1), twice = of(2);
    CHECK(waste_cost(twice, "side-trim") == Approx(2 * waste_cost(once, "side-trim")).margin(0.0002));
    CHECK(waste_cost(twice, "rejects") == Approx(2 * waste_cost(once, "rejects")).margin(0.0002));
    CHECK(twice.product_cost.to_double() == Approx(2 * once.product_cost.to_double()).margin(0.0002));
}
