// Closing a month from the desk: what is posted with it, and what it is refused for.
#include <catch2/catch.hpp>
#include <utility>

#include "ledger/proof/verify.hpp"
#include "ledger/reading/entries.hpp"
#include "tests/unit/month/month_bench.hpp"

using namespace flutebook;
using namespace flutebook::fixture;

namespace {

using Lines = std::vector<std::string>;

// 1000 kg in, 990 of it explained: 1 % is not, and the corrugator was counted empty.
void post_an_october(MonthBench& bench) {
    bench.paper("C1", "KL140", 1000, 650);
    bench.move("C1", "floor", "KL140", 900);
    bench.lose("C1", "KL140", "side-trim", 90);
    bench.move("floor", "FG1", "board", 500);
    bench.cost("FG1", "system", 40);
    bench.move("FG1", "finished", "board", 500);
    const int day = std::exchange(bench.day, 31);
    bench.count("C1", "KL140", 0);
    bench.day = day;
}

}  // namespace

TEST_CASE("a month that does not balance within the tolerance is closed only with a reason, which is kept") {
    MonthBench bench;
    post_an_october(bench);
    CHECK(bench.refusal() == Lines{bench.store.file() +
                                   ": 2026-10 does not balance: found 10.000 kg unexplained, 1.00 % of paper issued, "
                                   "above the tolerance of 0.50 %; post what is missing, or give the reason by --why"});
    CHECK(bench.refusal("  ").size() == 1);
    CHECK_FALSE(ledger::is_closed(bench.store, bench.month));
    const auto closed = bench.close("the roll scale failed on the 12th");
    CHECK(closed.seal.note == "the roll scale failed on the 12th");
    CHECK(closed.seal.head == ledger::head(bench.store)->hash);
    CHECK(ledger::is_closed(bench.store, bench.month));
}

TEST_CASE("a month that balances is closed without a word") {
    MonthBench bench;
    post_an_october(bench);
    bench.lose("C1", "KL140", "damage", 6);
    CHECK(bench.refusal().empty());
}

TEST_CASE("a close leaves the month's account as it was, and its books at what was counted") {
    MonthBench bench;
    bench.plant.balance_tolerance = 0.2;
    post_an_october(bench);
    bench.day = 20;
    bench.count("floor", "board", 380);
    bench.day = 31;
    bench.count("C1", "KL140", 7);
    bench.count("loose-scrap", "scrap", 88);
    const auto before = told(bench.account());
    const auto after_before = told(bench.account(month_of(2026, 11)));
    static_cast<void>(bench.close());
    CHECK(told(bench.account()) == before);
    CHECK(told(bench.account(month_of(2026, 11))) == after_before);
    for (const auto& stock : ledger::balances_before(bench.store, month_of(2026, 11))) {
        if (stock.account == "C1") CHECK(stock.mass == Grams::of(7000));
        CHECK(stock.account != "FG1");
    }
    CHECK(ledger::verify(bench.store).holds());
}

TEST_CASE("stock goes into the next month at its own cost, whether the month before is closed or open") {
    MonthBench open, closed;
    for (auto* bench : {&open, &closed}) {
        bench->plant.balance_tolerance = 0.2;
        post_an_october(*bench);
    }
    static_cast<void>(closed.close());
    for (auto* bench : {&open, &closed}) {
        bench->month = month_of(2026, 11);
        bench->move("floor", "FG1", "board", 300);
        bench->move("FG1", "finished", "board", 290);
    }
    CHECK(told(open.account()) == told(closed.account()));
    CHECK(closed.account().floor.open_cost.to_double() == Approx(400 * 0.65));
}

TEST_CASE("a stock below zero is shown, and the close waits until it is counted") {
    MonthBench bench;
    bench.plant.balance_tolerance = 2;
    bench.paper("C1", "KL140", 100, 65);
    bench.move("C1", "floor", "KL140", 100);
    bench.move("floor", "FG1", "board", 130);
    bench.move("FG1", "finished", "board", 130);
    CHECK(bench.account().floor.close == Grams::of(-30000));
    const auto lines = bench.refusal();
    REQUIRE(lines.size() == 1);
    CHECK(lines[0].find("floor ends 2026-10 below zero: found -30.000 kg") != std::string::npos);
    bench.day = 31;
    bench.count("floor", "board", 0);
    CHECK(bench.refusal().empty());
}

TEST_CASE("a refused close leaves nothing behind") {
    MonthBench bench;
    post_an_october(bench);
    bench.move("loose-scrap", "bale-yard", "4.01.00", 100);  // 10 more than there was
    const auto head = ledger::head(bench.store)->hash;
    CHECK_FALSE(bench.refusal("counted later").empty());
    CHECK(ledger::head(bench.store)->hash == head);
}

TEST_CASE("months are closed in their order, once") {
    MonthBench bench;
    post_an_october(bench);
    bench.month = month_of(2026, 11);
    bench.lose("floor", "board", "damage", 1);
    CHECK(bench.refusal("why not") == Lines{bench.store.file() + ": 2026-10 is still open; close it before 2026-11"});
    CHECK(bench.refusal() == bench.refusal("why not"));
    bench.month = month_of(2026, 10);
    static_cast<void>(bench.close("why not"));
    const auto again = bench.refusal("why not");
    REQUIRE(again.size() == 1);
    CHECK(again[0].find("is closed already") != std::string::npos);
}

TEST_CASE("an entry of a closed month is reversed on the first open day, or on the day that was said") {
    MonthBench bench;
    post_an_october(bench);
    const auto first = bench.lose("floor", "board", "damage", 3);
    const auto second = bench.lose("floor", "board", "damage", 5);
    static_cast<void>(bench.close("why not"));
    const auto reversed = services::reverse(bench.store, {first, "it was found again", "mara", std::nullopt});
    CHECK(reversed.reversal.draft.date == std::chrono::year(2026) / 11 / 1);
    CHECK(reversed.reversed_kind == "row");
    const auto dated = std::chrono::year(2026) / 11 / 20;
    CHECK(services::reverse(bench.store, {second, "this one too", "mara", dated}).reversal.draft.date == dated);
    CHECK(bench.account(month_of(2026, 11)).floor.lost == Grams::of(-8000));
    CHECK(bench.account(month_of(2026, 10)).floor.lost == Grams::of(8000));
}

TEST_CASE("a closed month is shown as it was closed, whatever papers cost today") {
    MonthBench bench;
    bench.plant.papers[0].prices = {{std::chrono::year(2026) / 1 / 1, 600, {}}};
    bench.plant.balance_tolerance = 2;
    bench.move("C1", "finished", "KL140", 100);  // at today's price, since none came in
    bench.day = 31;
    bench.count("C1", "KL140", 0);
    static_cast<void>(bench.close("the store's rows are lost"));
    const auto before = told(bench.account());
    bench.plant.papers[0].prices[0].per_tonne = 900;
    CHECK(told(bench.account()) == before);
    CHECK(bench.account().product_cost.to_double() == 60);
    CHECK(ledger::verify(bench.store).holds());
}

TEST_CASE("a month whose close kept no account is worked out by today's rules, and its posted stock stays as it was") {
    MonthBench bench;
    post_an_october(bench);
    static_cast<void>(ledger::close_month(bench.store, {bench.month, {}, {}, "", "mara"}));
    const auto answer = services::month(bench.plant, bench.store,
                                        {bench.month, std::nullopt, services::MonthOptions::Trend::none, bench.today});
    CHECK(answer.is_worked_out_again);
    CHECK(balances(answer.account));
    // No difference was posted, so all 690 that came in still stand in the books' stocks.
    CHECK(answer.account.closing_cost.to_double() == 690);
    CHECK(answer.account.corrections_cost.to_double() == Approx(260 - 690));
}
