// A month divided by machine, shift, board and order, and put beside the months before.
#include <catch2/catch.hpp>

#include "host/month/breakdown.hpp"
#include "host/production/accounts.hpp"
#include "tests/unit/month/month_bench.hpp"

using namespace flutebook;
using namespace flutebook::fixture;

namespace {

void post_two_shifts(MonthBench& bench) {
    bench.shift = "early";
    bench.paper("C1", "KL140", 1000, 650);
    bench.order = "500001";
    bench.board = "B-140";
    bench.move("C1", "floor", "KL140", 600);
    bench.lose("C1", "KL140", "side-trim", 40);
    bench.expect("C1", "side-trim", 30);
    bench.shift = "late";
    bench.order = "500002";
    bench.board = "C-140";
    bench.move("C1", "floor", "KL140", 300);
    bench.lose("C1", "KL140", "side-trim", 20);
    bench.move("floor", "FG1", "board", 500);
    bench.lose("FG1", "board", "rejects", 50);
    bench.expect("FG1", "rejects", 5);
    bench.move("FG1", "finished", "board", 450);
    bench.order.clear();
    bench.board.clear();
    bench.lose("finished", "board", "returns", 10);
    bench.day = 31;
    bench.count("C1", "KL140", 0);
}

answers::MonthAnswer by(MonthBench& bench, ledger::Axis axis) {
    return services::month(bench.plant, bench.store,
                           {bench.month, axis, services::MonthOptions::Trend::none, bench.today});
}

const month::PartFlows& part(const answers::MonthAnswer& answer, const std::string& of) {
    for (const auto& part : answer.parts)
        if (part.of == of) return part;
    FAIL("no part " << of);
    return answer.parts.front();
}

}  // namespace

TEST_CASE("parts by machine, shift, board and order add up to the month") {
    using ledger::Axis;
    MonthBench bench;
    post_two_shifts(bench);
    static_cast<void>(bench.close("parts of a closed month are the same"));
    for (const auto axis : {Axis::centre, Axis::shift, Axis::board, Axis::order}) {
        const auto answer = by(bench, axis);
        Grams lost, expected, product, issued;
        for (const auto& part : answer.parts) {
            lost += part.lost();
            expected += part.expected();
            product += part.product;
            issued += part.issued;
        }
        // The 10 kg of returns were weighed: no order and no board is known for them.
        const bool is_of_runs = axis == Axis::order || axis == Axis::board;
        CHECK(lost == answer.account.lost() - (is_of_runs ? Grams::of(10000) : Grams()));
        CHECK(expected == answer.account.expected());
        CHECK(product == answer.account.product);
        CHECK(issued == answer.account.issued);
    }
}

TEST_CASE("each part has what was made, fed and lost under its name") {
    MonthBench bench;
    post_two_shifts(bench);
    const auto shifts = by(bench, ledger::Axis::shift);
    CHECK(part(shifts, "early").sheets == Grams::of(600000));
    CHECK(part(shifts, "late").fed == Grams::of(500000));
    CHECK(part(shifts, "late").product == Grams::of(440000));
    const auto machines = by(bench, ledger::Axis::centre);
    CHECK(part(machines, "FG1").lost() == Grams::of(50000));
    CHECK(part(machines, "FG1").causes.front().excess() == Grams::of(45000));
    const auto orders = by(bench, ledger::Axis::order);
    CHECK(part(orders, "500001").lost() == Grams::of(40000));
    CHECK(part(orders, "").product == Grams::of(-10000));
    CHECK(part(by(bench, ledger::Axis::board), "C-140").sheets == Grams::of(300000));
}

TEST_CASE("a part that did nothing but lose is told, and one whose rows cancel is not") {
    const auto loss = [](const char* shift, std::int64_t grams) {
        return ledger::Share{shift,         "DC1", production::account::floor, production::account::loose_scrap,
                             "setup-waste", 1,     Grams::of(grams),           Money{}};
    };
    const auto parts =
        month::breakdown({loss("early", 500), loss("late", 300), loss("late", -300)}, {}, month::WeighedCauses::kept);
    REQUIRE(parts.size() == 1);
    CHECK(parts[0].of == "early");
    CHECK(parts[0].lost() == Grams::of(500));
}

TEST_CASE("by order and by board every weighed cause is left out on both sides, by machine and shift it stays") {
    MonthBench bench;
    post_two_shifts(bench);
    bench.order = "500001";
    bench.board = "B-140";
    bench.expect("C1", "roll-ends", 12);  // what the run of the order was allowed
    bench.order.clear();
    bench.board.clear();
    bench.lose("C1", "paper", "roll-ends", 15);
    for (const auto axis : {ledger::Axis::order, ledger::Axis::board})
        for (const auto& item : by(bench, axis).parts)
            for (const auto& cause : item.causes) CHECK((cause.cause == "side-trim" || cause.cause == "rejects"));
    const auto machine = part(by(bench, ledger::Axis::centre), "C1");
    REQUIRE(machine.causes.size() == 2);
    CHECK(machine.causes[0].cause == "roll-ends");
    CHECK(machine.causes[0].excess() == Grams::of(3000));
    CHECK(part(by(bench, ledger::Axis::order), "500001").lost() == Grams::of(40000));
}

TEST_CASE(
    "the trend holds the twelve months that end with this one, and the year's recycling rate is theirs together") {
    MonthBench bench;
    for (int back = 13; back >= 0; --back) {
        bench.month = month_of(2026, 10) - std::chrono::months(back);
        bench.lose("floor", "board", "damage", 10);
        bench.move("bale-yard", "mill:Northweir", "4.01.00", back == 13 ? 500 : 5);
    }
    const auto answer =
        services::month(bench.plant, bench.store,
                        {bench.month, std::nullopt, services::MonthOptions::Trend::twelve_months, bench.today});
    REQUIRE(answer.trend.size() == 12);
    CHECK(answer.trend.front().month == month_of(2025, 11));
    CHECK(answer.trend.back().month == month_of(2026, 10));
    CHECK(answer.recycling_rate_of_year() == Approx(0.5));
}
