// The model `energy`: heat and power worked by hand. Published figures are checked in tests/reference.
#include <catch2/catch.hpp>

#include "tests/support/model_bench.hpp"
#include "tests/unit/plugins/near.hpp"

using namespace flutebook::fixture;

namespace {

const ModelBench& energy_model() {
    static const ModelBench bench("energy");
    return bench;
}

// 1000 m2 of web: 200 kg of liner with 5 % of water, 150 kg (100 g/m2 x 1.5) of medium with 10 %; 9 kg of adhesive.
BenchRow order() {
    return {2,
            3,
            {{"board.made_here", 1},
             {"web.area", 1000},
             {"adhesive.dry", 9},
             {"ply.grammage", {200, 100}},
             {"ply.take_up", {1, 1.5}},
             {"ply.moisture", {0.05, 0.1}},
             {"step.power", {420, 75, 0}},
             {"run.hours", {0.5, 2, 0}},
             {"scrap.mass", {40, 20, 0}}},
            {{"fuel_price", 0.05}, {"power_price", 0.2}}};
}

}  // namespace

TEST_CASE("heat warms paper and adhesive and drives water off, through boiler and pipes") {
    BenchRow row = order();
    row.settings.insert({{"c_fibre", 1.4},
                         {"c_water", 4.2},
                         {"t_in", 20},
                         {"t_bond", 90},
                         {"solids", 0.25},
                         {"evaporated_share", 0.5},
                         {"moisture_drop", 0.02},
                         {"h_evap", 2250},
                         {"boiler_efficiency", 0.8},
                         {"distribution_efficiency", 0.75},
                         {"standing_heat", 0.5}});
    // liner 200 x (0.95 x 1.4 + 0.05 x 4.2) = 308; medium 150 x (0.9 x 1.4 + 0.1 x 4.2) = 252; together 560 kJ/K
    // water of the adhesive 9 x (4 - 1) = 27 kg, 113.4 kJ/K; x 70 K = 47138 kJ
    // driven off 0.5 x 27 + 0.02 x 350 = 20.5 kg x 2250 = 46125 kJ; Q = 93263 kJ
    // x 1.5 / 3600 / 0.6 = 64.766 kWh of fuel
    const auto result = energy_model().evaluate(row);
    CHECK(result.lines.at("energy.heat").quantity.at(0) == near(93263.0 * 1.5 / 3600 / 0.6));
    CHECK(result.lines.at("energy.heat").rate.at(0) == 0.05);
    CHECK(result.lines.at("energy.heat").quantity.at(1) == 0);
}

TEST_CASE("heat left at its defaults warms from 20 to 95 degrees") {
    // liner 200 x (0.95 x 1.34 + 0.05 x 4.19) = 296.5; medium 150 x (0.9 x 1.34 + 0.1 x 4.19) = 243.75
    // water 27 kg, 113.13 kJ/K; 653.38 x 75 = 49003.5; (0.6 x 27 + 0.02 x 350) x 2257 = 52362.4
    const auto result = energy_model().evaluate(order());
    CHECK(result.lines.at("energy.heat").quantity.at(0) == near((49003.5 + 52362.4) / 3600 / (0.82 * 0.80)));
}

TEST_CASE("a board that is bought is heated by nobody here, and what is baled of it is") {
    BenchRow row = order();
    row.facts.insert_or_assign("board.made_here", 0);
    const auto result = energy_model().evaluate(row);
    CHECK(result.lines.at("energy.heat").quantity.at(0) == 0);
    CHECK(result.lines.at("energy.power").quantity.at(1) == near(150.5));
}

TEST_CASE("power is what machines draw while they run and what the baler takes for the scrap") {
    const auto result = energy_model().evaluate(order());
    const auto& power = result.lines.at("energy.power");
    CHECK(power.quantity.at(0) == near(211));    // 420 x 0.5 + 25 x 0.040
    CHECK(power.quantity.at(1) == near(150.5));  // 75 x 2 + 25 x 0.020
    CHECK(power.quantity.at(2) == 0);
    CHECK(power.amount() == near(72.3));  // 361.5 x 0.2
}

TEST_CASE("a board that would bond colder than it comes is refused") {
    BenchRow row = order();
    row.settings.insert({{"t_in", 40}, {"t_bond", 39}});
    CHECK(energy_model().evaluate(row).refused == "t_bond is below t_in");
    row.settings.insert_or_assign("t_bond", 40);
    CHECK(energy_model().evaluate(row).refused.empty());
}
