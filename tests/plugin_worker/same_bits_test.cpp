// A model in a process of its own gives the same bits as in this process, on any number of threads.
#include <catch2/catch.hpp>

#include <cstring>
#include <memory>

#include "tests/plugin_worker/workbench.hpp"
#include "tests/support/generated_plants.hpp"
#include "tests/support/property.hpp"
#include "tests/support/row_source.hpp"
#include "tests/support/small_plant.hpp"

using namespace flutebook;
using engine::Costing;
using engine::Engine;
using fixture::RowSource;

namespace {

const std::vector<std::string>& all_models() {
    static const std::vector<std::string> all = {"run",     "scrap",  "paper",       "starch",  "setup",
                                                 "running", "energy", "consumables", "tooling", "delivery"};
    return all;
}

bool same(double left, double right) {
    return std::memcmp(&left, &right, sizeof left) == 0;
}

bool same(const std::vector<double>& left, const std::vector<double>& right) {
    return std::equal(left.begin(), left.end(), right.begin(), right.end(),
                      [](double one, double other) { return same(one, other); });
}

bool same(const Costing& left, const Costing& right) {
    bool result = left.cost == right.cost && left.lines.size() == right.lines.size() &&
                  left.losses.size() == right.losses.size() && same(left.fed, right.fed) &&
                  same(left.good, right.good) && same(left.issued_kg, right.issued_kg) &&
                  same(left.web_length_m, right.web_length_m) && same(left.adhesive_kg, right.adhesive_kg);
    for (std::size_t l = 0; result && l < left.lines.size(); ++l)
        result = same(left.lines[l].quantity, right.lines[l].quantity) && same(left.lines[l].rate, right.lines[l].rate);
    for (std::size_t c = 0; result && c < left.losses.size(); ++c) result = same(left.losses[c], right.losses[c]);
    return result;
}

// The calculated run, as if it had been measured.
engine::MeasuredRun as_measured(const Costing& costing) {
    return {costing.fed,       costing.good,        costing.web_length_m, costing.web_area_m2,
            costing.issued_kg, costing.adhesive_kg, costing.losses};
}

std::vector<std::int64_t> costs(const Engine& engine, const std::vector<engine::Row>& rows, unsigned threads) {
    std::vector<std::int64_t> result;
    for (const engine::Outcome& outcome : engine.cost(rows, threads)) result.push_back(outcome.cost.ten_thousandths());
    return result;
}

// Rows of several shapes in many blocks.
struct ManyRows {
    ManyRows(const plant::Plant& plant, const Engine& engine)
        : requests{fixture::box_request(plant), fixture::double_wall_request(plant), fixture::sheet_request(plant),
                   fixture::outline_request(plant), fixture::long_route_request(plant)} {
        for (auto& request : requests) {
            request.quantities.clear();
            for (int i = 0; i < 40; ++i) request.quantities.push_back(100 + 617 * i);
        }
        for (const auto& request : requests) {
            sources.push_back(std::make_unique<RowSource>(plant, engine, request));
            rows.insert(rows.end(), sources.back()->rows().begin(), sources.back()->rows().end());
        }
    }
    std::vector<orders::Request> requests;
    std::vector<std::unique_ptr<RowSource>> sources;
    std::vector<engine::Row> rows;
};

}  // namespace

TEST_CASE("each of the ten models gives the same bits isolated, over generated plants") {
    std::size_t turn = 0;
    std::size_t rows = 0;
    CHECK(fixture::holds_for_seeds(40, [&](std::uint64_t seed) {
        fixture::Generated result = fixture::generated_order(seed);
        isolated::complete(result.plant);
        const Engine here = isolated::open(result.plant);
        isolated::isolate(result.plant, {all_models()[turn++ % all_models().size()]});
        const Engine apart = isolated::open(result.plant);
        const RowSource source(result.plant, here, result.request);
        RC_ASSERT(costs(here, source.rows(), 1) == costs(apart, source.rows(), 2));
        for (std::size_t r = 0; r < std::min<std::size_t>(source.rows().size(), 3); ++r) {
            const Costing full = *here.cost_in_full(source.rows()[r]);
            RC_ASSERT(same(full, *apart.cost_in_full(source.rows()[r])));
            const engine::MeasuredRun run = as_measured(full);
            RC_ASSERT(same(*here.cost_in_full(source.rows()[r], run), *apart.cost_in_full(source.rows()[r], run)));
        }
        rows += source.rows().size();
    }));
    CHECK(rows > 0);
}

TEST_CASE("one, two and eight threads give the same costs with every model isolated") {
    plant::Plant plant = isolated::full_plant();
    const Engine here = isolated::open(plant);
    isolated::isolate(plant, all_models());
    const Engine apart = isolated::open(plant);
    const ManyRows many(plant, here);
    const auto expected = costs(here, many.rows, 1);
    for (const unsigned threads : {1U, 2U, 8U}) {
        INFO(threads << " threads");
        CHECK(costs(apart, many.rows, threads) == expected);
    }
}
