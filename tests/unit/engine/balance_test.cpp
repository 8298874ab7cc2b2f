// Conservation of mass, counted by hand from what a costed row tells: what was issued is in the boxes or under a cause.
#include <catch2/catch.hpp>

#include <cmath>
#include <map>
#include <numeric>

#include "host/engine/engine.hpp"
#include "tests/support/generated_plants.hpp"
#include "tests/support/property.hpp"
#include "tests/support/row_source.hpp"

using namespace flutebook;
using engine::Engine;
using fixture::RowSource;

namespace {

double sum(const std::vector<double>& values) {
    return std::accumulate(values.begin(), values.end(), 0.0);
}

// How far a row is out of balance, as a share of what came in.
double imbalance(const engine::Costing& costing, const engine::Row& row) {
    const double in = sum(costing.issued_kg) + costing.adhesive_kg;
    double out = row.order->quantity * row.order->layout->blank.area_m2 * row.order->layout->board.grammage_gsm / 1000;
    for (const auto& cause : costing.losses) out += sum(cause);
    return std::fabs(in - out) / in;
}

}  // namespace

TEST_CASE("mass balances for every candidate of 10,000 generated plants and orders") {
    std::size_t candidates = 0;
    CHECK(fixture::holds_for_seeds(10000, [&](std::uint64_t seed) {
        const fixture::Generated result = fixture::generated_order(seed);
        const Engine engine = Engine::start(result.plant, fixture::built_plugins());
        const RowSource source(result.plant, engine, result.request);
        for (const engine::Row& row : source.rows()) {
            const auto full = engine.cost_in_full(row);
            RC_ASSERT(full.has_value());
            RC_ASSERT(imbalance(*full, row) <= 1e-9);
            ++candidates;
        }
    }));
    // Most generated orders can be made, or the property would say little.
    CHECK(candidates > static_cast<std::size_t>(fixture::trials(10000)));
}

TEST_CASE("mass balances for every candidate of 2,500 generated orders, alone and whatever share of trim they pay") {
    std::size_t candidates = 0;
    CHECK(fixture::holds_for_seeds(2500, [&](std::uint64_t seed) {
        fixture::Generated result = fixture::generated_order(seed);
        const Engine engine = Engine::start(result.plant, fixture::built_plugins());
        plant::TrimPolicy alone, usual, untrimmed, wasteful;
        usual.share = static_cast<double>(seed % 1000) / 2000;
        usual.changes = static_cast<double>(seed % 37) / 30;
        untrimmed.share = 0;
        untrimmed.changes = 0;
        wasteful.share = 0.95;
        wasteful.changes = 10;
        for (const plant::TrimPolicy& policy : {alone, usual, untrimmed, wasteful}) {
            result.request.trim = policy;
            const RowSource source(result.plant, engine, result.request);
            for (const engine::Row& row : source.rows()) {
                const auto full = engine.cost_in_full(row);
                RC_ASSERT(full.has_value());
                RC_ASSERT(imbalance(*full, row) <= 1e-9);
                ++candidates;
            }
        }
    }));
    CHECK(candidates > static_cast<std::size_t>(fixture::trials(2500)));
}

TEST_CASE("mass balances where a slitter parts the blanks, and where they are stitched and packed by hand") {
    using Kind = plant::Converter::Kind;
    std::map<Kind, std::size_t> rows;
    CHECK(fixture::holds_for_seeds(4000, [&](std::uint64_t seed) {
        const fixture::Generated result = fixture::generated_order(seed);
        std::vector<Kind> kinds;
        if (result.request.route)
            for (const std::size_t machine : *result.request.route)
                if (const Kind kind = result.plant.converters[machine].kind; kind >= Kind::slitter)
                    kinds.push_back(kind);
        if (kinds.empty()) return;
        const Engine engine = Engine::start(result.plant, fixture::built_plugins());
        const RowSource source(result.plant, engine, result.request);
        for (const engine::Row& row : source.rows()) {
            RC_ASSERT(imbalance(engine.cost_in_full(row).value(), row) <= 1e-9);
            for (const Kind kind : kinds) ++rows[kind];
        }
    }));
    CHECK(rows[Kind::slitter] > 0);
    CHECK(rows[Kind::stitcher] > 0);
    CHECK(rows[Kind::hand] > 0);
}
