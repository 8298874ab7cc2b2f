// The split of cost between product and loss against worked examples of material flow cost accounting (ISO 14051:2011).
#include <catch2/catch.hpp>

#include "host/engine/costing/quantity_centre.hpp"

using namespace flutebook::contract;
using namespace flutebook::engine;

TEST_CASE("a single quantity centre: 100 t in, 70 t out, material traced 80 to 20") {
    // Training slides on material flow cost accounting, H. Tachikawa, expert of ISO/TC 207/WG 8 (seen as reproduced;
    // totals computed): material 650,000, energy 50,000, system 250,000, waste management 50,000.
    const CentreSplit result = split({.materials = {{650000, 0.20}},
                                      .energy = 50000,
                                      .system = 250000,
                                      .waste_management = 50000,
                                      .lost_share = 30.0 / 100});
    CHECK(result.material.product == Approx(520000));
    CHECK(result.material.loss == Approx(130000));
    CHECK(result.energy.product == Approx(35000));
    CHECK(result.energy.loss == Approx(15000));
    CHECK(result.system.product == Approx(175000));
    CHECK(result.system.loss == Approx(75000));
    CHECK(result.waste_management.product == 0);
    CHECK(result.waste_management.loss == Approx(50000));
    CHECK(result.product() == Approx(730000));
    CHECK(result.loss() == Approx(270000));
}

TEST_CASE("the same centre with material by mass as well, where nothing is traced") {
    // Computed from the same slides with one key for all.
    const CentreSplit result = split({.materials = {{650000, 0.30}},
                                      .energy = 50000,
                                      .system = 250000,
                                      .waste_management = 50000,
                                      .lost_share = 0.30});
    CHECK(result.product() == Approx(665000));
    CHECK(result.loss() == Approx(335000));
}

TEST_CASE("two processes in a row: the second takes on what the first one's product carries") {
    // Slides of the secretary of ISO/TC 207/WG 8, Y. Furukawa, March 2013 (inputs seen; this part computed): 1,000 g of
    // raw material for 10,000 and conversion for 10,000 make 900 g; the second process adds 15,000.
    const CentreSplit first = split({.materials = {{10000, 0.1}}, .system = 10000, .lost_share = 0.1});
    CHECK(first.product() == Approx(18000));
    CHECK(first.loss() == Approx(2000));
    const CentreSplit second = split({.materials = {{first.product(), 0.0}}, .system = 15000, .lost_share = 0.0});
    CHECK(second.product() + second.loss() == Approx(33000));
}

TEST_CASE("what product and loss take is what was spent") {
    const CentreSplit result = split({.materials = {{12.5, 0.31}, {7, 0}, {3, 1}},
                                      .energy = 2.25,
                                      .system = 8,
                                      .waste_management = 1.5,
                                      .lost_share = 0.12});
    CHECK(result.product() + result.loss() == Approx(12.5 + 7 + 3 + 2.25 + 8 + 1.5).epsilon(1e-12));
}
