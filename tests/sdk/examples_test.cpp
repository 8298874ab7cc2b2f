// The examples of the SDK, each in whole quotes of the small plant, against figures worked by hand.
#include <catch2/catch.hpp>

#include "tests/sdk/example_plant.hpp"

using namespace flutebook;
using namespace flutebook::sdk_test;

namespace {

Approx near(double value) {
    return Approx(value).epsilon(1e-12);
}

}  // namespace

TEST_CASE("all examples work in one plant, and one that nobody asks for charges nothing") {
    plant::Plant plain = example_plant({});
    plant::Plant all = example_plant({{"varnish", {{"price", "3"}}},
                                      {"tariff", {{"surcharge", "0.1"}}},
                                      {"small_orders", {{"at_small", "1"}}},
                                      {"emissions", {{"fuel_by_area", "0.05"}}},
                                      {"inspection", {{"hourly", "30"}}}});
    all.preferences = {prefer("energy.power_price", "tariff"), prefer("step.run_waste", "small_orders")};
    for (const auto& request : {fixture::box_request(plain), fixture::long_route_request(plain),
                                fixture::sheet_request(plain), fixture::double_wall_request(plain)})
        CHECK(costs(all, request) == costs(plain, request));
}

TEST_CASE("varnish goes by coats, laydown, area and pieces fed") {
    plant::Plant plant = example_plant({{"varnish", {{"price", "2.5"}}}});
    plant.models.back().settings.push_back(written_table("laydown", {{"FG1", "4"}}, 4));
    const Costed costed(plant, with(fixture::long_route_request(plant), "varnish", {{"coats", "2"}}));
    const auto lines = costed.lines("varnish");
    REQUIRE(lines.size() == 1);
    // ceil(10000 / 0.988) + 40 = 10162 boxes of 0.11 m2, 2 x 4 g/m2
    CHECK(lines[0].quantity == near(10162 * 0.11 * 0.008));
    CHECK(lines[0].amount == Money::of_ten_thousandths(223564));  // 8.94256 kg x 2.50
}

TEST_CASE("power costs the plant's price and the surcharge of the hours in which the order runs") {
    plant::Plant plant =
        example_plant({{"tariff", {{"surcharge", "0.2"}, {"early_peak", "0.5"}, {"late_peak", "0.25"}}}});
    plant.preferences = {prefer("energy.power_price", "tariff")};
    const auto rate = [&](const std::string& shift) {
        const Costed costed(plant, with(fixture::box_request(plant), "tariff", {{"shift", shift}}));
        return costed.lines("energy.power").at(0).rate;
    };
    CHECK(rate("early") == near(0.27));  // 0.17 + 0.2 x 0.5
    CHECK(rate("late") == near(0.22));
    CHECK(rate("night") == near(0.17));
    CHECK(rate("any") == near(0.22));  // the mean of 0.5, 0.25 and 0 is 0.25
}

TEST_CASE("a small order wastes more of what it is fed, a large one what the machine's file says") {
    plant::Plant plant = example_plant({{"small_orders", {{"small", "1000"}, {"large", "5000"}, {"at_small", "2"}}}});
    plant.preferences = {prefer("step.run_waste", "small_orders")};
    orders::Request box = fixture::box_request(plant);
    box.route = fixture::route_of(plant, {"FG1"});
    const auto fed = [&](double boxes) {
        box.quantities = {boxes};
        return Costed(plant, box).fed(1);
    };
    // FG1 loses 1.2 % and is set with 40 sheets.
    CHECK(fed(500) == 553);    // ceil(500 / (1 - 0.024)) = 513
    CHECK(fed(1000) == 1065);  // ceil(1000 / 0.976) = 1025
    CHECK(fed(2000) == 2083);  // a quarter of the way: 1.75 times 1.2 %, ceil(2000 / 0.979) = 2043
    CHECK(fed(5000) == 5101);  // ceil(5000 / 0.988) = 5061
    CHECK(fed(9000) == 9150);  // ceil(9000 / 0.988) = 9110
}

TEST_CASE("a house rule that leaves nothing good refuses the order, and says why") {
    plant::Plant plant = example_plant({{"small_orders", {{"at_small", "20"}}}});
    plant.preferences = {prefer("step.run_waste", "small_orders")};
    plant.converters[fixture::converter_index(plant, "FG1")].run_waste = 0.1;
    orders::Request box = fixture::box_request(plant);
    box.route = fixture::route_of(plant, {"FG1"});
    box.quantities = {500};
    CHECK(Costed(plant, box).refused() == "the house rule for waste leaves next to no good pieces");
}

TEST_CASE("greenhouse gases are calculated from paper, heat, power and scrap, and cost nothing without a price") {
    const plant::Plant plain = example_plant({});
    const plant::Plant plant = example_plant({{"emissions", {{"fuel_by_area", "0.05"}}}});
    const orders::Request box = fixture::box_request(plant);
    CHECK(costs(plant, box) == costs(plain, box));

    const Costed costed(plant, box);
    const engine::Costing& costing = costed.costing();
    double paper = 0;
    for (std::size_t p = 0; p < 3; ++p) {
        CHECK(costed.provided("emissions", "emissions.paper", p) == near(costing.issued_kg[p] * 1.19972542));
        paper += costed.provided("emissions", "emissions.paper", p);
    }
    const double fuel = costed.provided("emissions", "emissions.fuel", 0);
    CHECK(fuel == near(costing.web_area_m2 * 0.05 * 0.18231));
    double other = 0;
    for (std::size_t k = 0; k < 3; ++k) {
        const double power = costed.provided("emissions", "emissions.power", k);
        CHECK(power == near(costed.power_kw(k) * costed.provided("running", "run.hours", k) * 0.281));
        double lost_kg = 0;
        for (const auto& cause : costing.losses) lost_kg += cause[k];
        const double scrap = costed.provided("emissions", "emissions.scrap", k);
        CHECK(scrap == Approx(lost_kg * 0.00465358).epsilon(1e-9));
        other += power + scrap;
    }
    const double total = costed.provided("emissions", "emissions.total", 0);
    CHECK(total == near(paper + fuel + other));
    CHECK(costed.provided("emissions", "emissions.per_box", 0) == near(total / 500));
}

TEST_CASE("with a carbon price every step is charged its tonnes, and together they are the order's") {
    const plant::Plant plant = example_plant({{"emissions", {{"fuel_by_area", "0.05"}, {"carbon_price", "80"}}}});
    const Costed costed(plant, fixture::box_request(plant));
    double tonnes = 0;
    for (const auto& line : costed.lines("emissions.carbon")) {
        CHECK(line.rate == 80);
        tonnes += line.quantity;
    }
    CHECK(tonnes == near(costed.provided("emissions", "emissions.total", 0) / 1000));
}

TEST_CASE("a plant may give each paper the factor of what it is made from") {
    plant::Plant plant = example_plant({{"emissions", {{"fuel_by_area", "0"}}}});
    const Costed before(plant, fixture::box_request(plant));
    plant.models.back().settings.push_back(written_table("paper_factor", {{"SC127", "1098.11442"}}, 4));
    const Costed after(plant, fixture::box_request(plant));
    const auto paper = [](const Costed& costed, std::size_t ply) {
        return costed.provided("emissions", "emissions.paper", ply);
    };
    CHECK(paper(after, 0) == paper(before, 0));
    CHECK(paper(after, 1) == near(paper(before, 1) * 1098.11442 / 1199.72542));
}

TEST_CASE("a model in plain C inspects one box of so many, rounded up") {
    const plant::Plant plant = example_plant({{"inspection", {{"hourly", "30"}}}});
    const auto hours = [&](const std::string& every) {
        const auto lines = Costed(plant, with(fixture::long_route_request(plant), "inspection", {{"every", every}}))
                               .lines("inspection");
        return lines.empty() ? 0 : lines.at(0).quantity;
    };
    CHECK(hours("0") == 0);
    CHECK(hours("1000") == 0.5);  // 10 boxes of 3 minutes
    CHECK(hours("3000") == 0.2);  // 3.3 boxes are 4
    const orders::Request odd = with(fixture::long_route_request(plant), "inspection", {{"every", "0.5"}});
    CHECK(Costed(plant, odd).refused() ==
          "inspection: one box of less than one cannot be inspected; give 0 or 1 and more");
}

TEST_CASE("a small order is raised to the least charge, to the last coin, and a large one is left alone") {
    const plant::Plant plain = example_plant({});
    const plant::Plant charged = example_plant({{"least_charge", {{"least", "1000"}}}});
    orders::Request box = fixture::box_request(plain);
    box.quantities = {100};
    const std::int64_t least = 1000'0000;
    const std::vector<std::int64_t> small = costs(plain, box);
    REQUIRE(small.at(0) < least);
    CHECK(costs(charged, box) == std::vector<std::int64_t>(small.size(), least));
    const Costed costed(charged, box);
    REQUIRE(costed.lines("least_charge").size() == 1);
    CHECK(costed.lines("least_charge").at(0).amount == Money::of_ten_thousandths(least - small.at(0)));
    CHECK(costed.lines("least_charge").at(0).step == costed.costing().fed.size() - 1);
    box.quantities = {100000};
    CHECK(costs(charged, box) == costs(plain, box));
}

TEST_CASE("ways with equal cost after a least charge are ordered by their cost before it") {
    const plant::Plant plant = example_plant({{"least_charge", {{"least", "1000"}}}});
    orders::Request box = fixture::box_request(plant);
    box.quantities = {100};
    const engine::Engine engine = open(plant);
    const fixture::RowSource source(plant, engine, box);
    const std::vector<std::int64_t> before = costs(example_plant({}), box);
    const auto outcomes = engine.cost(source.rows(), 1);
    REQUIRE(outcomes.size() == before.size());
    for (std::size_t i = 0; i < outcomes.size(); ++i)
        CHECK(outcomes[i].before_late == Money::of_ten_thousandths(before[i]));
}
