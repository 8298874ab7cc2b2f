// A plugin built when 1.0 was released, and a build of the same source by today's SDK: one and the same to the host.
#include <catch2/catch.hpp>

#include <cmath>
#include <cstdint>
#include <cstring>

#include "tests/sdk/example_plant.hpp"

using namespace flutebook;
using namespace flutebook::sdk_test;

namespace {

// Every number of every line that a plant's varnish charges, as bits.
std::vector<std::uint64_t> charged_bits(const std::string& folder, const orders::Request& request) {
    plant::Plant plant = fixture::small_plant();
    plant.folder = folder;
    plant.models.push_back(fixture::model_entry("varnish", {{"price", "2.37"}}));
    plant.models.back().settings.push_back(
        written_table("laydown", {{"FG1", "4.1"}, {"FG2", "3.3"}, {"DC1", "5.7"}}, 4));
    const engine::Engine engine = open(plant);
    const fixture::RowSource source(plant, engine, request);
    std::vector<std::uint64_t> bits;
    for (const engine::Row& row : source.rows()) {
        const auto costing = engine.cost_in_full(row);
        for (const engine::LineAmount& line : costing.value().lines) {
            if (engine.graph().models[line.model].id != "varnish") continue;
            for (const double number : {line.quantity, line.rate}) {
                bits.emplace_back();
                std::memcpy(&bits.back(), &number, sizeof number);
            }
        }
    }
    return bits;
}

}  // namespace

TEST_CASE("a plugin built when 1.0 was released gives the same bits as its source built today") {
    const plant::Plant plant = fixture::small_plant();
    for (orders::Request request : {fixture::box_request(plant), fixture::long_route_request(plant)}) {
        request.quantities.clear();
        for (double boxes = 1; boxes < 100000; boxes = boxes * 1.7 + 3) request.quantities.push_back(std::floor(boxes));
        request = with(request, "varnish", {{"coats", "2"}});
        const auto released = charged_bits(FLUTEBOOK_RELEASED_PLANT, request);
        CHECK(released.size() > 100);
        CHECK(released == charged_bits(FLUTEBOOK_FRESH_PLANT, request));
        CHECK(released == charged_bits(FLUTEBOOK_GROWN_PLANT, request));  // every struct longer than this host knows
    }
}
