// Facts of an order and of its plies, as the host gives them to models.
#include <catch2/catch.hpp>
#include <chrono>
#include <string_view>
#include <vector>

#include "host/engine/engine.hpp"
#include "host/engine/facts.hpp"
#include "host/fields/known_units.hpp"
#include "tests/support/row_source.hpp"
#include "tests/support/small_plant.hpp"

using namespace flutebook;

namespace {

// A fact of the first way to make the request, at each of its indices.
std::vector<double> fact(const plant::Plant& plant, const orders::Request& request, std::string_view name,
                         std::size_t extent) {
    const auto engine = engine::Engine::start(plant, FLUTEBOOK_PLUGIN_DIR);
    const fixture::RowSource source(plant, engine, request);
    const engine::Row row = source.rows().at(0);
    std::vector<double> result(extent);
    for (std::size_t i = 0; i < extent; ++i)
        engine::facts().at(engine::fact_index(name)).fill({&row, 1}, i, &result[i]);
    return result;
}

}  // namespace

TEST_CASE("an order's date is the days since 1970, and its margin is the request's") {
    const plant::Plant plant = fixture::small_plant();
    orders::Request request = fixture::box_request(plant);
    request.margin = 0.18;
    request.date = std::chrono::year{2026} / 10 / 15;
    CHECK(fact(plant, request, "order.date", 1) == std::vector<double>{20741});
    CHECK(fact(plant, request, "order.margin", 1) == std::vector<double>{0.18});
}

TEST_CASE("a ply is a liner or a medium") {
    const plant::Plant plant = fixture::small_plant();
    CHECK(fact(plant, fixture::box_request(plant), "ply.kind", 3) == std::vector<double>{0, 1, 0});
    CHECK(fact(plant, fixture::double_wall_request(plant), "ply.kind", 5) == std::vector<double>{0, 1, 0, 1, 0});
}

// Reading the library's database takes longer than everything else that a quote waits for.
TEST_CASE("the unit of everything that a shipped model declares is known without the units library") {
    const plant::Plant plant = plant::read_plant(FLUTEBOOK_SOURCE_DIR "/config/demo");
    const auto engine = engine::Engine::start(plant, FLUTEBOOK_PLUGIN_DIR);
    std::vector<std::string> units;
    for (const contract::Model& model : engine.graph().models) {
        for (const contract::Name& need : model.needs) units.push_back(need.unit);
        for (const contract::Name& provided : model.provides) units.push_back(provided.unit);
        for (const contract::Setting& setting : model.settings) units.push_back(setting.unit);
        for (const contract::Line& line : model.lines) units.insert(units.end(), {line.unit, line.rate_unit});
    }
    CHECK(units.size() > 150);
    for (const std::string& unit : units) {
        CAPTURE(unit);
        CHECK((unit.empty() || fields::is_known_unit(unit)));
    }
}
