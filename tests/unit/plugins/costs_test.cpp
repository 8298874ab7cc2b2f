// The models paper, starch, scrap, setup and running: each line worked by hand.
#include <catch2/catch.hpp>

#include "tests/support/model_bench.hpp"
#include "tests/unit/plugins/near.hpp"

using namespace flutebook::fixture;

namespace {

void check_line(const BenchLine& line, const std::vector<double>& quantity, const std::vector<double>& rate) {
    REQUIRE(line.quantity.size() == quantity.size());
    for (std::size_t i = 0; i < quantity.size(); ++i) {
        CHECK(line.quantity[i] == near_or_zero(quantity[i]));
        if (quantity[i] != 0) CHECK(line.rate[i] == near_or_zero(rate[i]));
    }
}

const Named starch_of_the_demo{{"starch_price", 0.55},  {"caustic_price", 0.60},  {"borax_price", 1.10},
                               {"starch_share", 0.955}, {"caustic_share", 0.025}, {"borax_share", 0.020}};

}  // namespace

TEST_CASE("paper costs what is issued at the price of its ply") {
    const auto result = ModelBench("paper").evaluate({3,
                                                      3,
                                                      {{"board.made_here", 1},
                                                       {"paper.issued", {137.5, 151.25, 121}},
                                                       {"ply.grammage", {125, 110, 110}},
                                                       {"ply.price", {0.64, 0.5, 0.6}}}});
    check_line(result.lines.at("paper"), {137.5, 151.25, 121}, {0.64, 0.5, 0.6});
    CHECK(result.amount() == near_or_zero(236.225));  // 88 + 75.625 + 72.6
}

TEST_CASE("a board that is bought costs its square metres, and no paper") {
    const auto result = ModelBench("paper").evaluate(
        {1, 3, {{"board.made_here", 0}, {"paper.issued", {260}}, {"ply.grammage", {520}}, {"ply.price", {0.8}}}});
    // 260 kg at 520 g are 500 m2; 0.8 a kg are 0.416 a m2.
    check_line(result.lines.at("bought-board"), {500}, {0.416});
    check_line(result.lines.at("paper"), {0}, {0.8});
    CHECK(result.amount() == near_or_zero(208));
}

TEST_CASE("starch costs its dry parts at their shares") {
    const auto result = ModelBench("starch").evaluate({3, 3, {{"adhesive.dry", 200}}, starch_of_the_demo});
    // 0.955 x 0.55 + 0.025 x 0.60 + 0.020 x 1.10 = 0.52525 + 0.015 + 0.022 a kg
    check_line(result.lines.at("starch"), {200, 0, 0}, {0.56225, 0, 0});
}

TEST_CASE("starch refuses shares that add up to more than the whole") {
    Named settings = starch_of_the_demo;
    settings.insert_or_assign("borax_share", 0.021);
    const auto result = ModelBench("starch").evaluate({3, 3, {{"adhesive.dry", 200}}, settings});
    CHECK(result.refused == "starch_share, caustic_share and borax_share add up to more than 1");
    CHECK(ModelBench("starch").evaluate({3, 3, {{"adhesive.dry", 200}}, starch_of_the_demo}).refused.empty());
}

TEST_CASE("scrap of every step brings the bale price and costs its handling") {
    const auto result =
        ModelBench("scrap").evaluate({3, 3, {{"scrap.mass", {46, 47, 0}}}, {{"scrap_price", 85}, {"handling", 18}}});
    check_line(result.lines.at("scrap.credit"), {-46, -47, 0}, {0.085, 0.085, 0});
    check_line(result.lines.at("scrap.handling"), {46, 47, 0}, {0.018, 0.018, 0});
    CHECK(result.amount() == near_or_zero(-6.231));  // 93 x (0.018 - 0.085)
    CHECK_FALSE(std::signbit(result.lines.at("scrap.credit").quantity.at(2)));
}

TEST_CASE("setup charges the minutes of every step and of dispatch, once") {
    const auto result = ModelBench("setup").evaluate({3,
                                                      3,
                                                      {{"step.setup_time", {1.5, 25, 6}},
                                                       {"step.labour_rate", {240, 96, 40}},
                                                       {"step.fixed_rate", {380, 120, 10}}}});
    check_line(result.lines.at("setup.labour"), {0.025, 25.0 / 60, 0.1}, {240, 96, 40});
    check_line(result.lines.at("setup.fixed"), {0.025, 25.0 / 60, 0.1}, {380, 120, 10});
    CHECK(result.lines.at("setup.labour").amount() == near_or_zero(50));   // 6 + 40 + 4
    CHECK(result.lines.at("setup.fixed").amount() == near_or_zero(60.5));  // 9.5 + 50 + 1
}

TEST_CASE("running charges web length over speed, then pieces fed over speed, and nothing at dispatch") {
    const auto result = ModelBench("running").evaluate({3,
                                                        4,
                                                        {{"board.made_here", 1},
                                                         {"web.length", 6600},
                                                         {"web.speed", 220},
                                                         {"run.fed", {0, 3000, 9900, 9000}},
                                                         {"step.speed", {0, 6000, 9000, 0}},
                                                         {"step.labour_rate", {240, 90, 95, 50}},
                                                         {"step.fixed_rate", {380, 150, 120, 50}}}});
    const auto& hours = result.provides.at("run.hours");
    CHECK(hours.at(0) == near_or_zero(0.5));  // 6600 / 220 = 30 min
    CHECK(hours.at(1) == near_or_zero(0.5));
    CHECK(hours.at(2) == near_or_zero(1.1));
    CHECK(hours.at(3) == 0);
    check_line(result.lines.at("running.labour"), {0.5, 0.5, 1.1, 0}, {240, 90, 95, 0});
    check_line(result.lines.at("running.fixed"), {0.5, 0.5, 1.1, 0}, {380, 150, 120, 0});
}
