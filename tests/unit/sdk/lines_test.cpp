// Lines with a rate in another unit than money per unit, and lines of the whole order.
#include <catch2/catch.hpp>

#include "tests/support/row_source.hpp"
#include "tests/support/small_plant.hpp"
#include "tests/unit/sdk/sample.hpp"

using namespace flutebook;
using namespace flutebook::sdk_test;

TEST_CASE("a price a tonne on a quantity in kg is charged as that price, and the order's line stands at dispatch") {
    plant::Plant plant = sample_plant();
    plant.models.push_back(fixture::model_entry("haulage"));
    const engine::Engine engine = open(plant);
    const orders::Request request = fixture::box_request(plant);
    const fixture::RowSource source(plant, engine, request);
    const engine::Row row = source.rows().at(0);
    const auto costing = engine.cost_in_full(row);
    std::size_t found = 0;
    for (const auto& line : costing.value().lines) {
        if (engine.graph().models[line.model].id != "haulage") continue;
        ++found;
        CHECK(line.amount == Money::of_ten_thousandths(60'0000));  // 1500 kg x 40.00 a tonne
        CHECK(line.quantity == 1500);
        CHECK(line.rate == Approx(0.04).epsilon(1e-15));
        CHECK(line.step == row.steps() - 1);
    }
    CHECK(found == 1);
}
