// Published examples of process costing: what is lost in the normal course, and what is lost, or gained, beyond it. The
// normal loss is posted as what the allowances expect, so that the month tells the two apart.
#include <catch2/catch.hpp>

#include "host/month/costs.hpp"
#include "tests/unit/month/month_bench.hpp"

using namespace flutebook;
using namespace flutebook::fixture;

namespace {

struct Example {
    double in, material, labour, overhead, normal, output, scrap_price;
};

month::ProcessCost cost_of(const Example& example) {
    MonthBench bench;
    bench.paper("C1", "KL140", example.in, example.material);
    bench.cost("C1", "system", example.labour);
    bench.cost("C1", "system", example.overhead);
    bench.move("C1", "finished", "KL140", example.output);
    bench.lose("C1", "KL140", "corrugator-run", example.in - example.output);
    bench.expect("C1", "corrugator-run", example.normal);
    const auto account = bench.account();
    CHECK(balances(account));
    // With nothing unexplained, abnormal is the excess of the causes.
    const auto cost = month::process_cost(account, example.scrap_price).value();
    CHECK(cost.abnormal == account.causes.front().excess());
    return cost;
}

}  // namespace

TEST_CASE("normal loss is borne by good product, abnormal loss and gain cost as much as good product") {
    // A published ACCA F2 study text, chapter on process costing, pages 140 to 150 (seen, and recomputed): 1,000 kg of
    // material at 18 a kg, labour 1,800, overhead 900, normal loss 10 %. The effects on profit of the last two are
    // computed.
    const Example common{1000, 18000, 1800, 900, 100, 900, 0};
    const auto with = [&](double output, double scrap_price) {
        auto example = common;
        example.output = output;
        example.scrap_price = scrap_price;
        return cost_of(example);
    };
    SECTION("scrap that sells for nothing") {
        const auto cost = with(900, 0);
        CHECK(cost.cost_per_kg == Approx(23.00));
        CHECK(cost.product_value == Approx(20700));
        CHECK(cost.abnormal == Grams());
        CHECK(cost.normal_value == 0);
    }
    SECTION("scrap at 1.80 a kg") {
        const auto cost = with(900, 1.80);
        CHECK(cost.cost_per_kg == Approx(22.80));
        CHECK(cost.normal_value == Approx(180));
        CHECK(cost.product_value == Approx(20520));
    }
    SECTION("100 kg lost beyond the normal") {
        const auto cost = with(800, 1.80);
        CHECK(cost.product_value == Approx(18240));
        CHECK(cost.abnormal == Grams::of(100000));
        CHECK(cost.abnormal_value == Approx(2280));
        CHECK(cost.normal_value + cost.abnormal_proceeds == Approx(360));
        CHECK(cost.abnormal_value - cost.abnormal_proceeds == Approx(2100));
    }
    SECTION("50 kg gained on the normal") {
        const auto cost = with(950, 1.80);
        CHECK(cost.product_value == Approx(21660));
        CHECK(cost.abnormal == Grams::of(-50000));
        CHECK(cost.abnormal_value == Approx(-1140));
        CHECK(cost.normal_value + cost.abnormal_proceeds == Approx(90));
        CHECK(cost.abnormal_value - cost.abnormal_proceeds == Approx(-1050));
    }
}

TEST_CASE("a thousand units for 4,500 with a tenth lost cost 5 each, whether more or less is lost") {
    // An ACCA coaching page, 8.2 (seen): output 860, so 40 units of abnormal loss worth 200; with output 920, 20 units
    // of abnormal gain worth 100 (computed). A published ACCA F2 study text of 2010, page 206 (seen): 100 units for
    // 4,500 cost 50 for each good unit, not 45 for each that went in.
    const auto lost = cost_of({1000, 4500, 0, 0, 100, 860, 0});
    CHECK(lost.cost_per_kg == Approx(5.00));
    CHECK(lost.product_value == Approx(4300));
    CHECK(lost.abnormal == Grams::of(40000));
    CHECK(lost.abnormal_value == Approx(200));
    const auto gained = cost_of({1000, 4500, 0, 0, 100, 920, 0});
    CHECK(gained.abnormal == Grams::of(-20000));
    CHECK(gained.abnormal_value == Approx(-100));
    CHECK(cost_of({100, 4500, 0, 0, 10, 90, 0}).cost_per_kg == Approx(50));
}
