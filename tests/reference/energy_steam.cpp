// Fuel for steam through the model `energy`, against published and computed boiler sums. The boiler's water stands in
// for the adhesive's: warmed from the feedwater to the boiling point, then driven off.
#include <catch2/catch.hpp>

#include "tests/reference/energy_rows.hpp"

using namespace flutebook::fixture;

namespace {

constexpr double celsius(double fahrenheit) {
    return (fahrenheit - 32) / 1.8;
}

}  // namespace

TEST_CASE("1 kg of steam at 12 bar gauge from feedwater of 80 degrees takes 0.80117 kWh of fuel at 85 %") {
    // IAPWS-IF97: steam at 13.01325 bar absolute 2786.53, water of 80 degC 334.95 kJ/kg; 2451.58 / 0.85 = 2884.21 kJ
    // (computed). At that pressure water boils at 191.660 degC with 814.97 kJ/kg.
    BenchRow row = lossless_row();
    row.facts.insert_or_assign("adhesive.dry", 1);
    row.settings.insert({{"solids", 0.5},
                         {"t_in", 80},
                         {"t_bond", 191.660},
                         {"evaporated_share", 1},
                         {"c_water", (814.97 - 334.95) / (191.660 - 80)},
                         {"h_evap", 1971.55}});
    row.settings.insert_or_assign("boiler_efficiency", 0.85);
    CHECK(heat_kj(row) / 3600 == Approx(0.80117).margin(0.00001));
}

TEST_CASE("1000 lb of steam at 150 psig from feedwater of 150 F cost 10.60 dollars of gas at 8.00 a MMBtu") {
    // Utility note on the ASME steam tables (questline.com, nationalgrid.myenergysites.com), published and seen:
    // 857 + (366 - 150) = 1073 Btu/lb; 8.00e-6 x 1000 x 1073 / 0.81 = 10.60 dollars.
    // Exact: 1 lb = 0.45359237 kg, 1 Btu/lb = 2.326 kJ/kg, 1 Btu/(lb F) = 4.1868 kJ/(kg K), 1 MMBtu = 293.07107 kWh.
    BenchRow row = lossless_row();
    row.facts.insert_or_assign("adhesive.dry", 453.59237);
    row.settings.insert({{"solids", 0.5},
                         {"t_in", celsius(150)},
                         {"t_bond", celsius(366)},
                         {"evaporated_share", 1},
                         {"c_water", 4.1868},
                         {"h_evap", 857 * 2.326}});
    row.settings.insert_or_assign("boiler_efficiency", 0.81);
    row.settings.insert_or_assign("fuel_price", 8.00 / 293.07107);
    CHECK(ModelBench("energy").evaluate(row).amount() == Approx(10.5975).margin(0.0005));
}
