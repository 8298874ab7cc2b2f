// What was made of an order, read back from its entries; what is missing of it; and the arithmetic of variances.
#include <catch2/catch.hpp>

#include "host/month_answers/order_answer.hpp"
#include "host/production/order_actual.hpp"
#include "host/services/orders/order_stages.hpp"
#include "host/services/posting/reverse.hpp"
#include "ledger/reading/entries.hpp"
#include "ledger/writing/posting.hpp"
#include "tests/unit/production/documents_bench.hpp"

using namespace flutebook;
using namespace flutebook::fixture;
using Catch::Matchers::Contains;
using orders::OrderRecord;
using production::OrderActual;

namespace {

// A ledger that an order's rows are posted to, as `post` does.
class OrderBench {
public:
    explicit OrderBench(OrderRecord order) : order_(std::move(order)), store_(ledger::Store::in_memory()) {
        book_.orders[order_.number] = order_;
    }

    std::int64_t post(const std::string& header, const std::string& row) {
        const auto draft = draft_of(header, row, book_);
        static_cast<void>(ledger::post(store_, {&draft, 1}, "ada"));
        return ledger::head(store_)->entry;
    }

    void reverse(std::int64_t entry) {
        static_cast<void>(services::reverse(store_, {entry, "keyed wrongly", "ada", std::nullopt}));
    }

    [[nodiscard]] OrderActual actual() const {
        return production::actual_of(order_, ledger::entries_of_order(store_, order_.number));
    }
    [[nodiscard]] std::vector<answers::StepRan> steps() const { return services::steps_ran(order_, actual()); }
    [[nodiscard]] std::vector<std::string> missing() const { return production::what_is_missing(order_, actual()); }

private:
    OrderRecord order_;
    KnownBook book_;
    ledger::Store store_;
};

}  // namespace

TEST_CASE("what was posted for an order is read back to the digit") {
    OrderBench bench(box_order("4711"));
    bench.post(own_layout_header, "R1,2026-10-01,early,C1,4711,720.0625,25,1000");
    bench.post(corrugator_header, "R2,2026-10-02,late,C2,4711,1700,2,70.5,0.00001,60");
    bench.post(converter_header, "R3,2026-10-03,early,FG1,4711,1060,45,15,998");
    const auto actual = bench.actual();
    REQUIRE(actual.web.size() == 2);
    CHECK(actual.web[0].metres == 720.0625);
    CHECK(actual.web[0].roll_width_mm == 1850);
    CHECK(actual.web[0].outs == 3);
    CHECK(actual.web[1].corrugator == "C2");
    CHECK(actual.web[1].roll_width_mm == 1700);
    CHECK(actual.web[1].order_change_m == 0.00001);
    CHECK(actual.good_sheets() == 1060);
    CHECK(actual.fed(1) == 1060);
    CHECK(actual.went_on(1) == 998);
    CHECK(actual.boxes() == 998);
    CHECK(actual.days().front() == base::parse_date("2026-10-01"));
    CHECK(actual.days().back() == base::parse_date("2026-10-03"));
}

TEST_CASE("runs on a part of a web are that part of a setup") {
    OrderBench bench(box_order("4711"));
    bench.post(shared_web_header, "R1,2026-10-01,early,C1,4711,620,1,1000,25,400,2480");
    CHECK(bench.actual().web[0].web_share == 0.25);
    CHECK(bench.actual().web[0].combined_m2() == 620);
    bench.post(shared_web_header, "R2,2026-10-02,early,C1,4711,1240,2,500,20,400,2480");
    bench.post(shared_web_header, "R3,2026-10-02,late,C1,4711,1240,2,500,0,400,2480");  // it goes on
    bench.post(converter_header, "R4,2026-10-03,early,FG1,4711,1060,45,15,998");
    CHECK(bench.steps()[0].setups == 0.75);
    CHECK(bench.steps()[1].setups == 1);
}

TEST_CASE("a row that was reversed never was, nor was its mirror") {
    OrderBench bench(box_order("4711"));
    bench.post(own_layout_header, "R1,2026-10-01,early,C1,4711,720,25,1000");
    const auto wrong = bench.post(converter_header, "R2,2026-10-03,early,FG1,4711,1000,45,15,940");
    bench.reverse(wrong);
    CHECK(bench.actual().boxes() == 0);
    CHECK_THAT(bench.missing().front(), Contains("runs of FG1, step 1"));
    bench.post(converter_header, "R3,2026-10-03,early,FG1,4711,1000,40,10,950");
    CHECK(bench.actual().boxes() == 950);
    CHECK(bench.missing().empty());
}

TEST_CASE("blanks are counted after the step where they part from the sheet") {
    OrderBench bench(long_order("4712"));
    bench.post(own_layout_header, "R1,2026-10-01,early,C1,4712,400,25,400");
    bench.post(converter_header, "R2,2026-10-02,early,PR1,4712,400,50,10,");
    bench.post(converter_header, "R3,2026-10-03,early,DC1,4712,340,60,10,");
    bench.post(converter_header, "R4,2026-10-04,early,FG1,4712,1620,40,20,1560");
    const auto actual = bench.actual();
    CHECK(actual.went_on(1) == 340);
    CHECK(actual.went_on(2) == 270 * 6);
    CHECK(actual.boxes() == 1560);
    CHECK(bench.missing().empty());
}

TEST_CASE("another machine of its kind counts for the step it stood in for") {
    OrderBench bench(box_order("4711"));
    bench.post(own_layout_header, "R1,2026-10-01,early,C1,4711,720,25,1000");
    bench.post(converter_header, "R2,2026-10-02,early,FG2,4711,500,20,10,470");
    bench.post(converter_header, "R3,2026-10-02,late,FG1,4711,500,40,5,455");
    CHECK(bench.actual().steps[0].size() == 2);
    CHECK(bench.actual().boxes() == 925);
}

TEST_CASE("each run is a setup, a row that continues one is none, and a machine that ran was set up once") {
    OrderBench bench(box_order("4711"));
    bench.post(own_layout_header, "R1,2026-10-01,early,C1,4711,300,25,380");
    bench.post(own_layout_header, "R2,2026-10-01,late,C1,4711,200,0,270");
    bench.post(own_layout_header, "R3,2026-10-02,early,C2,4711,250,10,320");
    bench.post(converter_header, "R4,2026-10-02,early,FG1,4711,970,0,10,960");
    const auto steps = bench.steps();
    REQUIRE(steps.size() == 2);
    CHECK(steps[0].setups == 2);
    CHECK(steps[0].costed == "C1");
    REQUIRE(steps[0].machines.size() == 2);
    CHECK(steps[0].machines[0].amount == 500);
    CHECK(steps[1].setups == 1);
    CHECK(steps[1].costed == "FG1");
}

TEST_CASE("an order of which nothing was posted misses every run of its route") {
    const OrderBench bench(long_order("4712"));
    const auto missing = bench.missing();
    REQUIRE(missing.size() == 4);
    CHECK_THAT(missing[0], Contains("C1, the corrugator"));
    CHECK_THAT(missing[3], Contains("FG1, step 3"));
}

TEST_CASE("an order that is half fed is not made yet") {
    OrderBench bench(box_order("4711"));
    bench.post(own_layout_header, "R1,2026-10-01,early,C1,4711,760,25,1060");
    bench.post(converter_header, "R2,2026-10-02,early,FG1,4711,530,40,5,485");
    REQUIRE(bench.missing().size() == 1);
    CHECK_THAT(bench.missing().front(), Contains("530 of 1060 sheets still wait") && Contains("485 of 1000 boxes"));
}

TEST_CASE("a few sheets astray on the floor keep no order waiting, nor does an order that has boxes enough") {
    OrderBench short_of_some(box_order("4711"));
    short_of_some.post(own_layout_header, "R1,2026-10-01,early,C1,4711,740,25,1030");
    short_of_some.post(converter_header, "R2,2026-10-02,early,FG1,4711,1000,40,5,955");
    CHECK(short_of_some.missing().empty());
    OrderBench full(box_order("4711"));
    full.post(own_layout_header, "R1,2026-10-01,early,C1,4711,900,25,1290");
    full.post(converter_header, "R2,2026-10-02,early,FG1,4711,1050,40,5,1005");
    CHECK(full.missing().empty());
}

TEST_CASE("a machine that was fed more than was made tells of runs that were never posted") {
    OrderBench bench(box_order("4711"));
    bench.post(own_layout_header, "R1,2026-10-01,early,C1,4711,400,25,500");
    bench.post(converter_header, "R2,2026-10-02,early,FG1,4711,1060,40,15,1005");
    REQUIRE(bench.missing().size() == 1);
    CHECK_THAT(bench.missing().front(), Contains("FG1 was fed 1060 sheets, 500 good ones were made"));
    OrderBench miscounted(box_order("4711"));
    miscounted.post(own_layout_header, "R1,2026-10-01,early,C1,4711,760,25,1050");
    miscounted.post(converter_header, "R2,2026-10-02,early,FG1,4711,1060,40,15,1005");
    CHECK(miscounted.missing().empty());
}

TEST_CASE("an order of which no box came out good was not made") {
    OrderBench bench(box_order("4711"));
    bench.post(own_layout_header, "R1,2026-10-01,early,C1,4711,60,25,40");
    bench.post(converter_header, "R2,2026-10-02,early,FG1,4711,40,40,0,0");
    REQUIRE(bench.missing().size() == 1);
    CHECK_THAT(bench.missing().front(), Contains("none was made"));
}

TEST_CASE("volume, yield, usage and price lead from the first cost to the last") {
    const auto money = [](std::int64_t count) { return Money::of_ten_thousandths(count); };
    const auto item = answers::variances_of({money(1000), money(1100), money(1130), money(1125), money(1205)});
    CHECK(item.volume == money(100));
    CHECK(item.yield == money(30));
    CHECK(item.usage == money(-5));
    CHECK(item.price == money(80));
    CHECK(item.total() == money(205));
}

TEST_CASE("an input whose amount is too large to be kept has no cost") {
    CHECK_FALSE(answers::stages_of({1, 1, 1, 1e9, 1, 1e9}));
    CHECK(answers::stages_of({1, 1, 1, 1e9, 1, 1}));
}
