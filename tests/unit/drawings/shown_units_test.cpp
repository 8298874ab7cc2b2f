// What people of a plant read: metric, or the trade's inches, feet, pounds and MSF.
#include "host/drawings/shown_units.hpp"

#include <catch2/catch.hpp>

#include "tests/support/small_plant.hpp"

using namespace flutebook;
using namespace flutebook::base;
using namespace flutebook::drawings;

namespace {

ShownUnits shown(plant::Units units) {
    plant::Plant plant = fixture::small_plant();
    plant.units = units;
    plant.currency = "USD";
    return ShownUnits(plant);
}

}  // namespace

TEST_CASE("a metric plant reads the host's own numbers") {
    const ShownUnits metric = shown(plant::Units::metric);
    CHECK(metric.mass.text(1234.5) == "1 234.50 kg");
    CHECK(metric.web_length.text(225.9) == "225.9 m");
    CHECK(metric.grammage.text(437.62) == "437.6 g/m2");
    CHECK(metric.lengths({400, 300, 250.5}) == "400 x 300 x 250.5 mm");
    CHECK(metric.of("kg").scale == 1);
    CHECK(metric.of("money/kg").name == "USD/kg");
}

// The pound is 0.45359237 kg and the inch 25.4 mm, exactly: by definition, NIST SP 811, App. B (from memory). From both
// follows 1 lb/1000 ft2 = 4.88242763638 g/m2 (computed).
TEST_CASE("a us plant reads inches, feet, pounds and MSF") {
    const ShownUnits us = shown(plant::Units::us);
    CHECK(us.length(2540) == "100 in");
    CHECK(us.lengths({406.4, 304.8, 254}) == "16 x 12 x 10 in");
    CHECK(us.lengths({387.35, 304.8}) == "15 1/4 x 12 in");
    CHECK(us.lengths({}).empty());
    CHECK(us.mass.text(0.45359237 * 1000) == "1 000.00 lb");
    CHECK(us.web_length.text(304.8) == "1 000.0 ft");
    CHECK(us.area(0.09290304) == Approx(1).epsilon(1e-12));
    CHECK(us.grammage(26 * 4.88242763638) == Approx(26).epsilon(1e-11));
}

TEST_CASE("a us plant reads lengths of board in sixteenths, marked where they were rounded; of rolls not rounded") {
    const ShownUnits us = shown(plant::Units::us);
    CHECK(us.length(387.35) == "15 1/4 in");
    CHECK(us.length(2050) == "~80 11/16 in");
    CHECK(us.length_number(9.525) == "3/8");
    CHECK(us.exact_length(2050) == "80.709 in");
    CHECK(us.exact_length(2222.5) == "87 1/2 in");
    const ShownUnits metric = shown(plant::Units::metric);
    CHECK(metric.length(387.35) == "387.35 mm");
    CHECK(metric.length_number(387.35) == "387.35");
    CHECK(metric.exact_length(2050) == "2050 mm");
}

TEST_CASE("a line's quantity and rate change together, so that the amount does not") {
    const ShownUnits us = shown(plant::Units::us);
    for (const char* unit : {"kg", "m", "m2", "t km", "t", "g/m2", "kWh", "h", "box", "1", "money/t/km", "degC"}) {
        const ShownUnit shown_unit = us.of(unit);
        INFO(unit);
        CHECK(shown_unit(7.5) * (0.3 / shown_unit.scale) == Approx(7.5 * 0.3).epsilon(1e-12));
    }
    CHECK(us.of("kg").name == "lb");
    CHECK(us.of("kg").scale == Approx(2.2046226).epsilon(1e-7));
    CHECK(us.of("t km").scale == Approx(0.6849).epsilon(1e-3));  // 1.1023 short tons x 0.62137 miles
    CHECK(us.of("money/kg").name == "USD/lb");
    CHECK(us.of("kWh").name == "kWh");
    CHECK(us.of("1").name.empty());
}

TEST_CASE("the cost per MSF and per short ton is the cost over what was shipped, not a rounded cost scaled") {
    const ShownUnits metric = shown(plant::Units::metric);
    const ShownUnits us = shown(plant::Units::us);
    answers::Quote quote{};
    quote.quantity = 1000;
    quote.blank.area_m2 = 0.9290304;    // 10 ft2: 10 MSF in all
    quote.mass.product_kg = 907.18474;  // a short ton
    quote.cost = Money::of_ten_thousandths(12345678);
    quote.cost_per_m2 = Money::of_ten_thousandths(13289);
    quote.cost_per_tonne = Money::of_ten_thousandths(13608780);
    CHECK(us.cost_per_area(quote) == Money::of_ten_thousandths(1234568));
    CHECK(us.cost_per_mass(quote) == Money::of_ten_thousandths(12345678));
    CHECK(metric.cost_per_area(quote) == quote.cost_per_m2);
    CHECK(metric.cost_per_mass(quote) == quote.cost_per_tonne);
}
