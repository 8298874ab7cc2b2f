// Rows for the model `energy` alone, and the heat that comes out of them.
#pragma once

#include "tests/support/model_bench.hpp"

namespace flutebook::fixture {

/// No paper, no adhesive, no machine and no scrap; boiler and pipes lose nothing; fuel costs 1 a kWh.
[[nodiscard]] inline BenchRow lossless_row() {
    return {1,
            2,
            {{"board.made_here", 1},
             {"web.area", 0},
             {"adhesive.dry", 0},
             {"ply.grammage", {0}},
             {"ply.take_up", {1}},
             {"ply.moisture", {0}},
             {"step.power", {0, 0}},
             {"run.hours", {0, 0}},
             {"scrap.mass", {0, 0}}},
            {{"fuel_price", 1}, {"power_price", 0}, {"boiler_efficiency", 1}, {"distribution_efficiency", 1}}};
}

/// Heat of the fuel, kJ.
[[nodiscard]] inline double heat_kj(const BenchRow& row) {
    static const ModelBench energy("energy");
    return energy.evaluate(row).lines.at("energy.heat").quantity.at(0) * 3600;
}

}  // namespace flutebook::fixture
