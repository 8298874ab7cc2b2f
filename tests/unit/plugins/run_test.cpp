// The model `run`: orders worked by hand, and the balance of mass for whatever order there may be.
#include <rapidcheck.h>
#include <catch2/catch.hpp>

#include <numeric>

#include "tests/support/model_bench.hpp"
#include "tests/unit/plugins/any_order.hpp"
#include "tests/unit/plugins/near.hpp"

using namespace flutebook::fixture;

namespace {

const ModelBench& run_model() {
    static const ModelBench bench("run");
    return bench;
}

double sum(const std::vector<double>& values) {
    return std::accumulate(values.begin(), values.end(), 0.0);
}

double loss_kg(const BenchResult& result) {
    double all = 0;
    for (const auto& [cause, kg] : result.losses) all += sum(kg);
    return all;
}

double fed_to_the_web_kg(const BenchResult& result) {
    return sum(result.provides.at("paper.issued")) + result.provides.at("adhesive.dry").at(0);
}

void check_column(const std::vector<double>& found, const std::vector<double>& expected) {
    REQUIRE(found.size() == expected.size());
    for (std::size_t i = 0; i < found.size(); ++i) CHECK(found[i] == near_or_zero(expected[i]));
}

// 950 boxes of 0.75 m2, one a sheet of 0.98 x 0.8 m, folded and glued; two sheets on a web of 1.65 m.
BenchRow folded_box() {
    return {3,
            3,
            {{"order.quantity", 950},
             {"box.area", 0.75},
             {"sheet.area", 0.784},
             {"sheet.chop", 0.98},
             {"sheet.ups", 1},
             {"board.grammage", 457},
             {"web.roll_width", 1.65},
             {"web.trim", 0.05},
             {"web.outs", 2},
             {"web.share", 1},
             {"web.order_change", 30},
             {"web.roll_loss", 0.01},
             {"step.parting", 1},
             {"step.run_waste", {0.02, 0.05, 0}},
             {"step.setup_sheets", {0, 40, 0}},
             {"step.piece_area", {0.784, 0.784, 0}},
             {"ply.grammage", {150, 110, 132}},
             {"ply.take_up", {1, 1.5, 1}},
             {"ply.adhesive", {0, 10, 0}}}};
}

// 1001 boxes of 0.03 m2, die-cut 4 from a sheet of 0.5 x 0.25 m, then folded and glued; eight sheets on a web of 2.1 m.
BenchRow die_cut_box() {
    return {3,
            4,
            {{"order.quantity", 1001},
             {"box.area", 0.03},
             {"sheet.area", 0.125},
             {"sheet.chop", 0.5},
             {"sheet.ups", 4},
             {"board.grammage", 500},
             {"web.roll_width", 2.1},
             {"web.trim", 0.1},
             {"web.outs", 8},
             {"web.share", 1},
             {"web.order_change", 5},
             {"web.roll_loss", 0},
             {"step.parting", 1},
             {"step.run_waste", {0.05, 0, 0.09, 0}},
             {"step.setup_sheets", {0, 22, 9, 0}},
             {"step.piece_area", {0.125, 0.125, 0.03, 0}},
             {"ply.grammage", {150, 125, 140}},
             {"ply.take_up", {1, 1.6, 1}},
             {"ply.adhesive", {0, 10, 0}}}};
}

// Sheets sold as sheets: no converter, parting at the corrugator.
BenchRow plain_sheets(double quantity, double ups) {
    return {3,
            2,
            {{"order.quantity", quantity},
             {"box.area", 1.2 / ups},
             {"sheet.area", 1.2},
             {"sheet.chop", 1.2},
             {"sheet.ups", ups},
             {"board.grammage", 400},
             {"web.roll_width", 4},
             {"web.trim", 0},
             {"web.outs", 4},
             {"web.share", 1},
             {"web.order_change", 0},
             {"web.roll_loss", 0},
             {"step.parting", 0},
             {"step.run_waste", {0, 0}},
             {"step.setup_sheets", {0, 0}},
             {"step.piece_area", {1.2, 0}},
             {"ply.grammage", {120, 100, 120}},
             {"ply.take_up", {1, 1.5, 1}},
             {"ply.adhesive", {0, 10, 0}}}};
}

}  // namespace

TEST_CASE("a folded box is fed, combined and issued as worked by hand") {
    const BenchResult result = run_model().evaluate(folded_box());
    // 950 / 0.95 = 1000 sheets, and 40 to set the machine
    check_column(result.provides.at("run.fed"), {0, 1040, 950});
    check_column(result.provides.at("run.good"), {1040, 950, 950});
    // 1040 / 2 = 520 cuts of 0.98 m = 509.6 m; / 0.98 = 520 m, and 30 m of order change
    CHECK(result.provides.at("web.length").at(0) == near_or_zero(550));
    CHECK(result.provides.at("web.area").at(0) == near_or_zero(907.5));  // 550 x 1.65
    // 907.5 m2 x 150, 110 x 1.5 and 132 g/m2 = 136.125, 149.7375 and 119.79 kg on the board; / 0.99 with roll ends
    check_column(result.provides.at("paper.issued"), {137.5, 151.25, 121});
    CHECK(result.provides.at("adhesive.dry").at(0) == near_or_zero(9.075));  // 907.5 x 10 g/m2
}

TEST_CASE("a folded box loses by cause what is worked by hand") {
    const BenchResult result = run_model().evaluate(folded_box());
    check_column(result.losses.at("roll-ends"), {4.0975, 0, 0});        // 409.75 x 0.01
    check_column(result.losses.at("side-trim"), {12.5675, 0, 0});       // 550 x 0.05 x 0.457
    check_column(result.losses.at("order-change"), {21.936, 0, 0});     // 30 x 1.6 x 0.457
    check_column(result.losses.at("corrugator-run"), {7.60448, 0, 0});  // (550 - 30 - 509.6) x 1.6 x 0.457
    check_column(result.losses.at("surplus"), {0, 0, 0});
    check_column(result.losses.at("setup"), {0, 14.33152, 0});   // 40 x 0.784 x 0.457
    check_column(result.losses.at("rejects"), {0, 17.9144, 0});  // (1040 - 40 - 950) x 0.784 x 0.457
    check_column(result.losses.at("cut-out"), {0, 14.7611, 0});  // 950 x (0.784 - 0.75) x 0.457
    check_column(result.provides.at("scrap.mass"), {46.20548, 47.00702, 0});
    CHECK(fed_to_the_web_kg(result) == near_or_zero(418.825));  // 409.75 + 9.075
    CHECK(loss_kg(result) == near_or_zero(93.2125));            // 418.825 - 950 x 0.75 x 0.457
}

TEST_CASE("sheets are counted up to the die cutter and boxes after it") {
    const BenchResult result = run_model().evaluate(die_cut_box());
    // 1001 / 0.91 = 1100 boxes, 9 to set; 1109 / 4 = 277.25, so 278 sheets hold them; 22 to set the die cutter
    check_column(result.provides.at("run.fed"), {0, 300, 1109, 1001});
    check_column(result.provides.at("run.good"), {300, 278, 1001, 1001});
    CHECK(result.provides.at("web.length").at(0) == near_or_zero(25));  // 38 cuts x 0.5 / 0.95 + 5
    check_column(result.losses.at("surplus"), {0.25, 0.045, 0, 0});     // 4 sheets x 0.125 x 0.5; 3 boxes x 0.03 x 0.5
    check_column(result.losses.at("setup"), {0, 1.375, 0.135, 0});      // 22 x 0.125 x 0.5; 9 x 0.03 x 0.5
    check_column(result.losses.at("rejects"), {0, 0, 1.485, 0});        // 99 x 0.03 x 0.5
    check_column(result.losses.at("cut-out"), {0, 0.695, 0, 0});        // 278 x (0.125 - 4 x 0.03) x 0.5
    check_column(result.losses.at("corrugator-run"), {1, 0, 0, 0});     // (25 - 5 - 19) x 2 x 0.5
    CHECK(loss_kg(result) == near_or_zero(11.235));                     // 52.5 m2 x 0.5 - 1001 x 0.03 x 0.5
}

TEST_CASE("sheets sold as sheets lose only what the last cut holds too many") {
    const BenchResult result = run_model().evaluate(plain_sheets(990, 1));
    check_column(result.provides.at("run.good"), {990, 990});
    CHECK(result.provides.at("web.length").at(0) == near_or_zero(297.6));  // 248 cuts x 1.2
    check_column(result.losses.at("surplus"), {0.96, 0});                  // 2 sheets x 1.2 x 0.4
    CHECK(loss_kg(result) == near_or_zero(0.96));
}

TEST_CASE("surplus of the cut and of the parting add up where boxes part at the corrugator") {
    const BenchResult result = run_model().evaluate(plain_sheets(100, 3));
    check_column(result.provides.at("run.good"), {34, 100});  // 34 sheets hold 102
    check_column(result.losses.at("surplus"), {1.28, 0});     // 2 sheets x 1.2 x 0.4 + 2 boxes x 0.4 x 0.4
}

TEST_CASE("990 good sheets at 1 % waste take 1000, not 1001") {
    BenchRow order = folded_box();
    order.facts.insert_or_assign("order.quantity", 990);
    order.facts.insert_or_assign("step.run_waste", Numbers{0.02, 0.01, 0});
    CHECK(run_model().evaluate(order).provides.at("run.fed").at(1) == 1040);
}

TEST_CASE("mass balances to 1e-9 for every order") {
    REQUIRE(rc::check([] {
        const BenchRow order = any_order();
        const BenchResult result = run_model().evaluate(order);
        const double in = fed_to_the_web_kg(result);
        RC_ASSERT(std::abs(in - product_kg(order) - loss_kg(result)) <= 1e-9 * in);
    }));
}

TEST_CASE("no cause loses less than nothing, and scrap is the sum of the causes at each step") {
    REQUIRE(rc::check([] {
        const BenchResult result = run_model().evaluate(any_order());
        const auto& scrap = result.provides.at("scrap.mass");
        std::vector<double> by_step(scrap.size(), 0);
        for (const auto& [cause, kg] : result.losses)
            for (std::size_t k = 0; k < kg.size(); ++k) {
                RC_ASSERT(kg[k] >= 0);
                by_step[k] += kg[k];
            }
        for (std::size_t k = 0; k < scrap.size(); ++k) RC_ASSERT(std::abs(scrap[k] - by_step[k]) <= 1e-12 * by_step[k]);
        RC_ASSERT(scrap.back() == 0);
    }));
}

TEST_CASE("each step feeds whole pieces, enough for the next") {
    REQUIRE(rc::check([] {
        const BenchRow order = any_order();
        const BenchResult result = run_model().evaluate(order);
        const auto& fed = result.provides.at("run.fed");
        const auto& good = result.provides.at("run.good");
        const double ups = number(order, "sheet.ups");
        RC_ASSERT(fed.at(0) == 0);
        RC_ASSERT(good.back() == number(order, "order.quantity"));
        for (std::size_t k = 0; k + 1 < fed.size(); ++k) {
            const double held = static_cast<double>(k) == number(order, "step.parting") ? ups : 1;
            RC_ASSERT(good[k] == std::floor(good[k]));
            RC_ASSERT(good[k] * held >= fed[k + 1]);
            RC_ASSERT((good[k] - 1) * held < fed[k + 1]);
            RC_ASSERT(k == 0 || fed[k] >= good[k]);
        }
    }));
}

TEST_CASE("papers and adhesive twice as heavy weigh twice in every mass") {
    REQUIRE(rc::check([] {
        BenchRow order = any_order();
        const BenchResult once = run_model().evaluate(order);
        for (const char* name : {"ply.grammage", "ply.adhesive", "board.grammage"}) {
            std::vector<double> doubled = order.facts.at(name).all();
            for (double& value : doubled) value *= 2;
            order.facts.insert_or_assign(name, Numbers(doubled));
        }
        const BenchResult twice = run_model().evaluate(order);
        for (const auto& [cause, kg] : once.losses)
            for (std::size_t k = 0; k < kg.size(); ++k) RC_ASSERT(twice.losses.at(cause)[k] == 2 * kg[k]);
        RC_ASSERT(fed_to_the_web_kg(twice) == 2 * fed_to_the_web_kg(once));
        RC_ASSERT(twice.provides.at("run.fed") == once.provides.at("run.fed"));
    }));
}

TEST_CASE("a larger order issues no less paper") {
    REQUIRE(rc::check([] {
        BenchRow order = any_order();
        const double less = fed_to_the_web_kg(run_model().evaluate(order));
        order.facts.insert_or_assign("order.quantity", number(order, "order.quantity") + *rc::gen::inRange(1, 1000));
        RC_ASSERT(fed_to_the_web_kg(run_model().evaluate(order)) >= less);
    }));
}
