// What a month waits for before it is closed: the conditions that `close` refuses by and `month` names.
#include <catch2/catch.hpp>

#include "tests/unit/month/month_bench.hpp"

using namespace flutebook;
using namespace flutebook::fixture;

namespace {

using std::chrono::year;

// 1000 kg in, 1000 kg of it explained.
void post_a_whole_month(MonthBench& bench) {
    bench.paper("C1", "KL140", 1000, 650);
    bench.move("C1", "floor", "KL140", 900);
    bench.lose("C1", "KL140", "side-trim", 100);
}

bool holds(const std::vector<std::string>& lines, const std::string& text) {
    for (const auto& line : lines)
        if (line.find(text) != std::string::npos) return true;
    return false;
}

std::vector<std::string> waits_for(MonthBench& bench) {
    return services::month(bench.plant, bench.store,
                           {bench.month, std::nullopt, services::MonthOptions::Trend::none, bench.today})
        .close_waits_for;
}

}  // namespace

TEST_CASE("a month that is not over is not closed, whatever reason is given") {
    MonthBench bench;
    post_a_whole_month(bench);
    bench.today = year(2026) / 10 / 31;
    const auto lines = bench.refusal("we want to go home");
    REQUIRE(lines.size() == 1);
    CHECK(lines[0] == bench.store.file() +
                          ": 2026-10 is not over: found 2026-10-31 on this computer's clock, and no production of a "
                          "later month; close it after 2026-10-31");
    CHECK(holds(waits_for(bench), "2026-10 is not over"));
    bench.today = year(2026) / 11 / 1;
    CHECK(waits_for(bench).empty());
    CHECK(bench.close().clock_note.empty());
}

TEST_CASE("production of a later month lets a month close although the clock lags, with a warning") {
    MonthBench bench;
    post_a_whole_month(bench);
    bench.today = year(2024) / 1 / 1;
    bench.month = month_of(2026, 11);
    bench.cost("C1", "energy", 10);
    bench.count("floor", "board", 900);
    const auto paper = bench.paper("C1", "KL140", 10, 6);
    static_cast<void>(services::reverse(bench.store, {paper, "keyed for October", "mara", std::nullopt}));
    bench.month = month_of(2026, 10);
    // A cost, a count and what was reversed are no production.
    CHECK(holds(bench.refusal(), "2026-10 is not over: found 2024-01-01"));
    bench.month = month_of(2026, 11);
    bench.paper("C1", "KL140", 10, 6);
    bench.month = month_of(2026, 10);
    const auto closed = bench.close();
    CHECK(closed.clock_note ==
          "this computer's clock is behind the books: found 2024-01-01 on it, and production after 2026-10-31; "
          "2026-10 counts as over");
}

TEST_CASE("a month far ahead is not closed over the months between") {
    MonthBench bench;
    post_a_whole_month(bench);
    static_cast<void>(bench.close());
    bench.month = month_of(2072, 12);
    const auto lines = bench.refusal("why not");
    CHECK(lines.size() == 2);
    CHECK(holds(lines, "2072-12 is not over"));
    CHECK(holds(lines, "nothing was posted in 554 months, from 2026-11 to 2072-12"));
    bench.empty_months = month::EmptyMonths::accept;
    CHECK(holds(bench.refusal("why not"), "2072-12 is not over"));
}

TEST_CASE("a month whose documents were never posted is a gap, until somebody says that nothing ran in it") {
    MonthBench bench;
    post_a_whole_month(bench);
    static_cast<void>(bench.close());
    bench.month = month_of(2026, 12);
    bench.today = year(2027) / 1 / 5;
    bench.move("floor", "FG1", "board", 900);
    bench.move("FG1", "finished", "board", 900);
    const auto lines = bench.refusal("why not");
    REQUIRE(lines.size() == 1);
    CHECK(holds(lines,
                "nothing was posted in 2026-11: post its documents, or close with --empty-months where nothing ran"));
    CHECK(waits_for(bench).size() == 1);
    bench.empty_months = month::EmptyMonths::accept;
    CHECK(bench.refusal().empty());
}

TEST_CASE("a machine whose books do not end near zero waits for a count, which no reason replaces") {
    MonthBench bench;
    bench.plant.balance_tolerance = 0.005;
    bench.paper("C1", "KL140", 1000, 650);
    bench.move("C1", "finished", "KL140", 994);  // 0.6 % is left in its books
    const auto lines = bench.refusal("the clerk was ill");
    REQUIRE(lines.size() == 1);
    CHECK(lines[0] == bench.store.file() +
                          ": C1 was not counted on 2026-10-31: found 6.000 kg in its books, 0.60 % of its intake, "
                          "above the tolerance of 0.50 %; post a count of that day, of 0 kg where it was empty");
    CHECK(waits_for(bench).size() == 1);
    bench.day = 30;
    bench.count("C1", "KL140", 6);
    CHECK(waits_for(bench).size() == 1);
    bench.day = 31;
    bench.count("C1", "KL140", 0);
    CHECK(waits_for(bench).empty());
    CHECK(bench.refusal("the clerk was ill").empty());
}

TEST_CASE("a machine whose books end within the tolerance of what it took in stands empty uncounted") {
    MonthBench bench;
    bench.paper("C1", "KL140", 1000, 650);
    bench.move("C1", "finished", "KL140", 995);
    CHECK(waits_for(bench).empty());
    CHECK(bench.refusal().empty());
    CHECK(balances(bench.account()));
}

TEST_CASE("a month names its stocks below zero before it is closed") {
    MonthBench bench;
    bench.plant.balance_tolerance = 2;
    bench.paper("C1", "KL140", 100, 65);
    bench.move("C1", "floor", "KL140", 100);
    bench.move("floor", "FG1", "board", 130);
    bench.move("FG1", "finished", "board", 130);
    bench.move("loose-scrap", "bale-yard", "4.01.00", 5);
    const auto lines = waits_for(bench);
    CHECK(lines.size() == 2);
    CHECK(holds(lines, "floor ends 2026-10 below zero: found -30.000 kg; count it, or post what is missing"));
    CHECK(holds(lines, "loose-scrap ends 2026-10 below zero: found -5.000 kg"));
}
