// The examples whose settings are more than one number: a rate with breakpoints, and freight by zone and pallets. The
// plant's entries are read as a person writes them.
#include <catch2/catch.hpp>

#include <map>

#include "host/explain/trail.hpp"
#include "tests/sdk/example_plant.hpp"

using namespace flutebook;
using namespace flutebook::sdk_test;

namespace {

plant::Plant plant_with(const std::vector<std::string>& entries) {
    plant::Plant plant = sample_plant();
    for (const std::string& entry : entries) plant.models.push_back(listed(entry));
    return plant;
}

// 8 pallets and 20 pallets are where the freight of the north falls.
plant::Plant freight_plant() {
    return plant_with({"delivery: {pallet_load: 100}",
                       "zone_freight: {rate: {north: {0: 31, 8: 24, 20: 19}, south: {0: 40}, default: 55}}"});
}

orders::Request boxes_to(const plant::Plant& plant, const std::string& zone, double quantity) {
    orders::Request request = with(fixture::box_request(plant), "zone_freight", {{"zone", zone}});
    request.quantities = {quantity};
    return request;
}

}  // namespace

TEST_CASE("packing by hand costs less a box the more boxes, from each breakpoint on") {
    const plant::Plant plant = plant_with({"hand_packing: {rate: {1: 0.05, 1000: 0.035, 10000: 2 EUR}}"});
    orders::Request packed = with(fixture::box_request(plant), "hand_packing", {{"packed", "yes"}});
    const auto packing = [&](double boxes) {
        packed.quantities = {boxes};
        const auto lines = Costed(plant, packed).lines("hand_packing");
        REQUIRE(lines.size() == 1);
        return lines[0].amount;
    };
    CHECK(packing(500) == Money::of_ten_thousandths(25'0000));
    CHECK(packing(999) == Money::of_ten_thousandths(49'9500));
    CHECK(packing(1000) == Money::of_ten_thousandths(35'0000));
    CHECK(packing(5000) == Money::of_ten_thousandths(175'0000));
    CHECK(packing(10000) == Money::of_ten_thousandths(20000'0000));
    CHECK(Costed(plant, fixture::box_request(plant)).lines("hand_packing").empty());
}

TEST_CASE("orders of all sizes in one block have each the rate of their own size") {
    const plant::Plant stepped = plant_with({"hand_packing: {rate: {1: 0.05, 1000: 0.035}}"});
    const plant::Plant small = plant_with({"hand_packing: {rate: 0.05}"});
    const plant::Plant large = plant_with({"hand_packing: {rate: 0.035}"});
    orders::Request packed = with(fixture::box_request(stepped), "hand_packing", {{"packed", "yes"}});
    packed.quantities = {400, 1600, 800, 3200};
    const auto by_step = costs(stepped, packed);
    const auto by_small = costs(small, packed);
    const auto by_large = costs(large, packed);
    const std::size_t ways = by_step.size() / 4;
    for (std::size_t i = 0; i < by_step.size(); ++i)
        CHECK(by_step[i] == ((i / ways) % 2 == 0 ? by_small[i] : by_large[i]));
}

TEST_CASE("freight goes by the zone of the request and the pallets that another model counts") {
    const plant::Plant plant = freight_plant();
    std::map<double, int> rates;
    for (const double boxes : {500, 1000, 2000, 4000, 8000, 16000}) {
        const Costed north(plant, boxes_to(plant, "north", boxes));
        const double pallets = north.provided("delivery", "delivery.pallets", 0);
        const auto line = north.lines("zone_freight").at(0);
        CHECK(line.quantity == pallets);
        CHECK(line.rate == (pallets < 8 ? 31 : pallets < 20 ? 24 : 19));
        ++rates[line.rate];
        CHECK(Costed(plant, boxes_to(plant, "south", boxes)).lines("zone_freight").at(0).rate == 40);
        CHECK(Costed(plant, boxes_to(plant, "abroad", boxes)).lines("zone_freight").at(0).rate == 55);
        CHECK(Costed(plant, boxes_to(plant, "collected", boxes)).lines("zone_freight").empty());
    }
    CHECK(rates.size() == 3);
}

TEST_CASE("the origin of a stepped rate leads to the number and the choice that decided it, and to its line") {
    const plant::Plant plant = freight_plant();
    const orders::Request request = boxes_to(plant, "north", 500);
    const engine::Engine engine = open(plant);
    const fixture::RowSource source(plant, engine, request);
    const auto trails = explain::explain(engine, source.rows().at(0), "zone_freight");
    REQUIRE(trails.size() == 1);
    const auto figure = [&](const std::string& name) -> const explain::TracedFigure& {
        for (const explain::TracedFigure& traced : trails[0].figures)
            if (traced.name == name) return traced;
        FAIL(name << " is not in the trail");
        return trails[0].figures[0];
    };
    const explain::TracedFigure& rate = figure("zone_freight.rate");
    REQUIRE(rate.places.size() == 1);
    CHECK(base::place_text(rate.places[0]).starts_with("plugins.yaml:1:"));
    std::vector<std::string> deciders;
    for (const std::size_t input : rate.inputs) deciders.push_back(trails[0].figures[input].name);
    CHECK(deciders == std::vector<std::string>{"delivery.pallets", "zone_freight.zone"});
    CHECK_FALSE(figure("delivery.pallets").inputs.empty());
}

TEST_CASE("the examples warn of an unusual rate, with its place, and still cost the order") {
    const plant::Plant plant = plant_with({"hand_packing: {rate: {1: 0.05, 1000: 35}}"});
    const engine::Engine engine = open(plant);
    REQUIRE(engine.unusual_settings().size() == 1);
    CHECK(base::place_text(engine.unusual_settings()[0].place) == "plugins.yaml:1:38");
    CHECK(engine.unusual_settings()[0].text ==
          "plugins.hand_packing.rate.1000: unusual: found 35, usually 0.005 to 1 money");
}
