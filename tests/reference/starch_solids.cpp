// One published batch of starch adhesive, through the two models that know its solids: `energy` works out the water
// that comes with the dry adhesive, `starch` what the dry adhesive costs.
//
// The batch: J. Kohl, Calculating starch adhesive solids, August 2010, scribd.com/document/437454816 (seen, published):
// primary water 834 lb, primary starch 95, caustic 16, borax 10, secondary water 1230, secondary starch 620; total
// 2805 lb, printed solids 26.41 % (all that is dry), 25.49 % (starch alone), 23.78 % (starch less its tenth of water;
// the printed 667 lb is not exactly 0.9 x 715 + 26 = 669.5, hence a tolerance of 0.1 point).
#include <catch2/catch.hpp>

#include "tests/reference/energy_rows.hpp"

using namespace flutebook::fixture;

namespace {

constexpr double total = 834 + 95 + 16 + 10 + 1230 + 620;
constexpr double starch = 95 + 620;
constexpr double dry = starch + 16 + 10;

// What comes with `solids_mass` of adhesive besides its solids. Water that takes 1 kJ/kg and is not warmed: the heat
// is its mass.
double liquid(double solids_mass, double solids) {
    BenchRow row = lossless_row();
    row.facts.insert_or_assign("adhesive.dry", solids_mass);
    row.settings.insert({{"solids", solids}, {"c_water", 0}, {"evaporated_share", 1}, {"h_evap", 1}});
    return heat_kj(row);
}

}  // namespace

TEST_CASE("dry adhesive at the batch's solids brings the batch's water") {
    CHECK(liquid(dry, dry / total) == Approx(834 + 1230).epsilon(1e-12));
}

TEST_CASE("the three printed solids give the batch's total back") {
    CHECK(total == 2805);
    // to 0.01 point of solids: 26.417 is printed as 26.41
    CHECK(dry + liquid(dry, 0.2641) == Approx(total).epsilon(0.0001 / 0.2641));
    CHECK(starch + liquid(starch, 0.2549) == Approx(total).epsilon(0.0001 / 0.2549));
    const double oven_dry = 0.9 * starch + 16 + 10;
    CHECK(oven_dry + liquid(oven_dry, 0.2378) == Approx(total).epsilon(0.001 / 0.2378));
}

TEST_CASE("the batch costs by its dry kilograms what its bags cost") {
    // Pearl starch holds about 10 % of water (same source, seen): a bag at 0.45 a kg is 0.50 a dry kg.
    const double oven_dry = 0.9 * starch + 16 + 10;
    const Named settings{{"starch_price", 0.45 / 0.9},
                         {"caustic_price", 0.60},
                         {"borax_price", 1.10},
                         {"starch_share", 0.9 * starch / oven_dry},
                         {"caustic_share", 16 / oven_dry},
                         {"borax_share", 10 / oven_dry}};
    const BenchResult result = ModelBench("starch").evaluate({3, 2, {{"adhesive.dry", oven_dry}}, settings});
    CHECK(result.refused.empty());
    CHECK(result.amount() == Approx(starch * 0.45 + 16 * 0.60 + 10 * 1.10).epsilon(1e-12));
}
