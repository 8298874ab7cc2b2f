// The sample plugin of twenty lines, built as an author builds it: what it charges, to the last ten-thousandth.
#include <catch2/catch.hpp>

#include "tests/unit/sdk/sample.hpp"

using namespace flutebook;
using namespace flutebook::sdk_test;

namespace {

// DC1 varnishes at 6 g/m2 a coat, FG1 at 4; 2.50 a kg.
plant::Plant varnishing_plant() {
    plant::Plant plant = sample_plant();
    plant.models.push_back(fixture::model_entry("varnish", {{"price", "2.5"}}));
    plant.models.back().settings.push_back(written_table("laydown", {{"DC1", "6"}, {"FG1", "4"}}, 4));
    return plant;
}

orders::Request with_coats(orders::Request request, const std::string& coats) {
    request.extras.push_back({"varnish", {"R-5.yaml", 12, 3}, {written("coats", coats, 13, "R-5.yaml")}});
    return request;
}

std::vector<engine::LineAmount> varnish_lines(const engine::Engine& engine, const engine::Costing& costing) {
    std::vector<engine::LineAmount> result;
    for (const engine::LineAmount& charged : costing.lines)
        if (engine.graph().models[charged.model].id == "varnish") result.push_back(charged);
    return result;
}

}  // namespace

TEST_CASE("varnish is charged by coat, laydown, area and pieces, at the machines that varnish") {
    const plant::Plant plant = varnishing_plant();
    const engine::Engine engine = open(plant);
    const orders::Request request = with_coats(fixture::long_route_request(plant), "2");
    const fixture::RowSource source(plant, engine, request);
    REQUIRE(source.rows().size() > 1);
    for (const engine::Row& row : source.rows()) {
        const auto costing = engine.cost_in_full(row);
        const auto lines = varnish_lines(engine, *costing);
        // PR1 does not varnish, DC1 varnishes sheets, FG1 boxes of 0.11 m2.
        REQUIRE(lines.size() == 2);
        CHECK(lines[0].step == 2);
        CHECK(lines[0].quantity ==
              Approx(2 * 6 / 1000.0 * row.candidate->sheet_area_m2 * costing->fed[2]).epsilon(1e-14));
        CHECK(lines[1].step == 3);
        // ceil(10000 / (1 - 0.012)) + 40 = 10162 boxes are fed
        CHECK(lines[1].quantity == Approx(2 * 4 / 1000.0 * 0.11 * 10162).epsilon(1e-14));
        CHECK(lines[1].rate == 2.5);
        CHECK(lines[1].amount == Money::of_ten_thousandths(223564));  // 8.94256 kg x 2.50
        CHECK_FALSE(lines[1].ply);
    }
}

TEST_CASE("a plugin adds its own lines to a quote and changes no other") {
    const plant::Plant plant = varnishing_plant();
    plant::Plant plain = plant;
    plain.models.pop_back();
    const orders::Request request = with_coats(fixture::outline_request(plant), "1");
    orders::Request without = request;
    without.extras.clear();
    const auto before = costs(plain, without);
    const auto after = costs(plant, request);
    REQUIRE(before.size() == after.size());

    const engine::Engine engine = open(plant);
    const fixture::RowSource source(plant, engine, request);
    for (std::size_t r = 0; r < after.size(); ++r) {
        const auto costing = engine.cost_in_full(source.rows()[r]);
        Money money;
        for (const auto& line : varnish_lines(engine, *costing)) money += line.amount;
        CHECK(money > Money{});
        CHECK(after[r] == before[r] + money.ten_thousandths());
    }
}

TEST_CASE("a request that asks for no varnish pays for none") {
    const plant::Plant plant = varnishing_plant();
    plant::Plant plain = plant;
    plain.models.pop_back();
    const orders::Request request = fixture::outline_request(plant);
    CHECK(costs(plant, request) == costs(plain, request));
}

TEST_CASE("a plant may give a setting in a unit of its own") {
    plant::Plant plant = varnishing_plant();
    const orders::Request request = with_coats(fixture::outline_request(plant), "1");
    const auto before = costs(plant, request);
    text_of(plant.models.back().settings[0]) = "25 EUR/t";
    CHECK(costs(plant, request) != before);
    text_of(plant.models.back().settings[0]) = "2500 EUR/t";
    CHECK(costs(plant, request) == before);
}

TEST_CASE("a setting by machine names machines of the plant, and nothing else") {
    plant::Plant plant = varnishing_plant();
    plant.models.back().settings[1] = written_table("laydown", {{"DCI", "6"}, {"FG1", "41"}, {"dispatch", "1"}}, 4);
    const std::string said = refusal(plant);
    CHECK_THAT(said,
               Catch::Contains("plugins.yaml:5:9: plugins.varnish.laydown.DCI: unknown machine, did you mean 'DC1'?"));
    CHECK_THAT(said,
               Catch::Contains(
                   "plugins.yaml:6:20: plugins.varnish.laydown.FG1: out of range: found 41, expected 0 to 40 g/m2"));
    CHECK(said.find("dispatch") == std::string::npos);
}

TEST_CASE("a setting by machine is a table") {
    plant::Plant plant = varnishing_plant();
    plant.models.back().settings[1] = written("laydown", "6", 4);
    CHECK_THAT(refusal(plant),
               Catch::Contains("plugins.yaml:4:20: plugins.varnish.laydown: wrong type: expected a table by machine"));
}

TEST_CASE("a setting that varies by request does not stand in the plant's file") {
    plant::Plant plant = varnishing_plant();
    plant.models.back().settings.push_back(written("coats", "2", 9));
    CHECK_THAT(refusal(plant), Catch::Contains("plugins.yaml:9:9: plugins.varnish.coats: varies by request"));
}

TEST_CASE("a request's extras are held against what the models declare, each at its place") {
    const plant::Plant plant = varnishing_plant();
    const orders::Request box = fixture::outline_request(plant);
    CHECK(refusal(plant, with_coats(box, "3")) == "");
    CHECK_THAT(refusal(plant, with_coats(box, "4")),
               Catch::Contains("R-5.yaml:13:20: extras.varnish.coats: out of range: found 4, expected 0 to 3"));

    orders::Request unknown = with_coats(box, "1");
    unknown.extras[0].id = "varnis";
    CHECK_THAT(refusal(plant, unknown),
               Catch::Contains("R-5.yaml:12:3: extras.varnis: no such model is loaded, did you mean 'varnish'?"));
    unknown.extras[0].id = "varnish";
    unknown.extras[0].settings[0].name = "coat";
    CHECK_THAT(refusal(plant, unknown),
               Catch::Contains("R-5.yaml:13:9: extras.varnish.coat: ") && Catch::Contains("did you mean 'coats'?"));
    unknown.extras[0].settings[0].name = "price";
    CHECK_THAT(refusal(plant, unknown),
               Catch::Contains("R-5.yaml:13:9: extras.varnish.price: no setting of varnish that varies by request"));
}
