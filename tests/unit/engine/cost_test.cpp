// What a row costs: lines, totals, and that nothing about blocks, threads or the order of the files moves a bit.
#include <catch2/catch.hpp>

#include <algorithm>
#include <system_error>

#include "host/contract/description.hpp"
#include "host/contract/evaluator.hpp"
#include "host/contract/library.hpp"
#include "host/contract/plugin_file.hpp"
#include "host/engine/costing/blocks.hpp"
#include "host/engine/engine.hpp"
#include "tests/support/row_source.hpp"
#include "tests/support/small_plant.hpp"

using namespace flutebook;
using engine::Costing;
using engine::Engine;
using engine::Outcome;
using fixture::RowSource;

namespace {

struct Work {
    plant::Plant plant = fixture::small_plant();
    Engine engine = Engine::start(plant, fixture::built_plugins());
};

std::vector<std::int64_t> costs(const std::vector<Outcome>& outcomes) {
    std::vector<std::int64_t> result;
    for (const Outcome& outcome : outcomes) result.push_back(outcome.cost.ten_thousandths());
    return result;
}

// Many rows of several shapes: every fixture request, at many quantities.
std::vector<orders::Request> many_requests(const plant::Plant& plant) {
    std::vector<orders::Request> result{fixture::box_request(plant), fixture::double_wall_request(plant),
                                        fixture::sheet_request(plant), fixture::outline_request(plant),
                                        fixture::long_route_request(plant)};
    for (auto& request : result) {
        request.quantities.clear();
        for (int i = 0; i < 40; ++i) request.quantities.push_back(100 + 617 * i);
    }
    return result;
}

struct ManyRows {
    explicit ManyRows(const Work& work) : requests(many_requests(work.plant)) {
        for (const auto& request : requests)
            sources.push_back(std::make_unique<RowSource>(work.plant, work.engine, request));
        for (const auto& source : sources) rows.insert(rows.end(), source->rows().begin(), source->rows().end());
    }
    std::vector<orders::Request> requests;
    std::vector<std::unique_ptr<RowSource>> sources;
    std::vector<engine::Row> rows;
};

// Its models work, but the process that should evaluate them cannot be started.
class NoProcess : public contract::Evaluator {
public:
    std::optional<contract::Failure> evaluate(const flutebook_block&, contract::RowSpan) override {
        throw std::system_error(std::make_error_code(std::errc::resource_unavailable_try_again), "no process");
    }
};

class NoProcessLoader : public contract::IsolatedLoader {
public:
    contract::Model open(contract::PluginFile file) override {
        contract::Model model = contract::describe(contract::load_plugin(file), file.name(), file.id());
        model.elsewhere = std::make_shared<NoProcess>();
        return model;
    }
};

}  // namespace

TEST_CASE("an exception in a costing thread reaches the caller, whatever the number of threads") {
    plant::Plant plant = fixture::small_plant();
    plant.isolated.push_back({"paper", {}});
    NoProcessLoader loader;
    const Work work{plant, Engine::start(plant, fixture::built_plugins(), nullptr, &loader)};
    const ManyRows many(work);
    for (const unsigned threads : {1U, 2U, 8U}) {
        CAPTURE(threads);
        CHECK_THROWS_AS(static_cast<void>(work.engine.cost(many.rows, threads)), std::system_error);
    }
}

TEST_CASE("the cost of a row is the sum of its rounded lines") {
    const Work work;
    const orders::Request request = fixture::box_request(work.plant);
    const RowSource source(work.plant, work.engine, request);
    const auto outcomes = work.engine.cost(source.rows(), 1);
    for (std::size_t r = 0; r < outcomes.size(); ++r) {
        const auto full = work.engine.cost_in_full(source.rows()[r]);
        REQUIRE(full.has_value());
        Money sum;
        for (const auto& line : full->lines) sum += line.amount;
        CHECK(sum == outcomes[r].cost);
        CHECK(full->cost == outcomes[r].cost);
    }
}

TEST_CASE("one, two and eight threads cost every row to the same amount") {
    const Work work;
    const ManyRows many(work);
    REQUIRE(many.rows.size() > 3 * engine::block_rows);
    const auto one = costs(work.engine.cost(many.rows, 1));
    CHECK(costs(work.engine.cost(many.rows, 2)) == one);
    CHECK(costs(work.engine.cost(many.rows, 8)) == one);
}

TEST_CASE("a row costs the same alone as in the middle of a block") {
    const Work work;
    const ManyRows many(work);
    const auto together = costs(work.engine.cost(many.rows, 1));
    std::vector<std::int64_t> alone;
    for (const engine::Row& row : many.rows) alone.push_back(costs(work.engine.cost({&row, 1}, 1)).front());
    CHECK(alone == together);
}

TEST_CASE("rows costed together have the same lines as each costed alone") {
    const Work work;
    const ManyRows many(work);
    const auto together = work.engine.cost_in_full(many.rows);
    REQUIRE(together.size() == many.rows.size());
    for (std::size_t r = 0; r < many.rows.size(); r += 37) {
        const auto alone = work.engine.cost_in_full(many.rows[r]);
        REQUIRE(together[r].has_value());
        CHECK(together[r]->cost == alone->cost);
        CHECK(together[r]->losses == alone->losses);
        CHECK(together[r]->fed == alone->fed);
        REQUIRE(together[r]->lines.size() == alone->lines.size());
        for (std::size_t i = 0; i < alone->lines.size(); ++i)
            CHECK(together[r]->lines[i].amount == alone->lines[i].amount);
    }
}

TEST_CASE("settings that were moved for one block move nothing in the next") {
    plant::Plant plant = fixture::small_plant();
    plant.models.push_back(fixture::model_entry("consumables", {{"ink_price", "4"}, {"ink_laydown", "10"}}));
    const Work work{plant, Engine::start(plant, fixture::built_plugins())};
    const ManyRows many(work);
    const auto before = costs(work.engine.cost(many.rows, 1));
    const engine::Row& row = many.rows.front();
    const engine::Graph& graph = work.engine.graph();
    std::size_t moved = 0;
    for (std::size_t m = 0; m < graph.models.size(); ++m)
        for (std::size_t s = 0; s < graph.models[m].settings.size(); ++s) {
            const contract::Setting& setting = graph.models[m].settings[s];
            if (setting.varies_by != contract::VariesBy::request) continue;
            const std::optional<engine::MovedSetting> move = engine::MovedSetting{m, s, setting.range.high};
            Outcome outcome;
            const engine::LentColumns columns = work.engine.blocks().columns({row.plies(), row.steps()});
            static_cast<void>(work.engine.blocks().run_moved(*columns, {&row, 1}, {&move, 1}, {&outcome, 1}));
            ++moved;
        }
    REQUIRE(moved > 0);
    CHECK(costs(work.engine.cost(many.rows, 1)) == before);
}

TEST_CASE("blocks are smaller where all models work in this process") {
    const Work here;
    plant::Plant plant = fixture::small_plant();
    plant.isolated.push_back({"paper", {}});
    NoProcessLoader loader;
    const Work apart{plant, Engine::start(plant, fixture::built_plugins(), nullptr, &loader)};
    CHECK(here.engine.blocks().rows_of_block() == engine::block_rows_here);
    CHECK(apart.engine.blocks().rows_of_block() == engine::block_rows);
}

TEST_CASE("the order of the models in the plant's file moves nothing") {
    Work work;
    Work turned;
    std::reverse(turned.plant.models.begin(), turned.plant.models.end());
    turned.engine = Engine::start(turned.plant, fixture::built_plugins());
    const ManyRows many(work);
    const ManyRows many_turned(turned);
    CHECK(costs(turned.engine.cost(many_turned.rows, 1)) == costs(work.engine.cost(many.rows, 1)));
    const auto full = work.engine.cost_in_full(many.rows.front());
    const auto full_turned = turned.engine.cost_in_full(many_turned.rows.front());
    REQUIRE(full->lines.size() == full_turned->lines.size());
    for (std::size_t i = 0; i < full->lines.size(); ++i) {
        CHECK(full->lines[i].amount == full_turned->lines[i].amount);
        CHECK(full->lines[i].step == full_turned->lines[i].step);
    }
}

TEST_CASE("twice the price of everything is twice the cost") {
    Work work;
    const orders::Request request = fixture::box_request(work.plant);
    const RowSource once(work.plant, work.engine, request);

    Work dear;
    for (auto& paper : dear.plant.papers)
        for (auto& price : paper.prices) price.per_tonne *= 2;
    const auto double_hourly = [](plant::Hourly& hourly) { hourly = {2 * hourly.labour, 2 * hourly.fixed}; };
    for (auto& corrugator : dear.plant.corrugators) double_hourly(corrugator.hourly);
    for (auto& converter : dear.plant.converters) double_hourly(converter.hourly);
    double_hourly(dear.plant.dispatch.hourly);
    for (auto& model : dear.plant.models)
        for (auto& setting : model.settings)
            if (setting.name.find("price") != std::string::npos || setting.name == "handling") {
                auto& text = std::get<fields::GivenText>(setting.value).text;
                text = std::to_string(2 * std::stod(text));
            }
    dear.engine = Engine::start(dear.plant, fixture::built_plugins());
    const orders::Request dear_request = fixture::box_request(dear.plant);
    const RowSource twice(dear.plant, dear.engine, dear_request);

    const auto first = work.engine.cost_in_full(once.rows().front());
    const auto second = dear.engine.cost_in_full(twice.rows().front());
    // Each line is rounded on its own, so twice a line may differ from the doubled one by a ten-thousandth.
    const auto lines = static_cast<std::int64_t>(first->lines.size());
    CHECK(std::abs(second->cost.ten_thousandths() - 2 * first->cost.ten_thousandths()) <= lines);
    CHECK(first->cost.ten_thousandths() > 0);
}

TEST_CASE("lines come in order of step, then of the graph, then of ply") {
    const Work work;
    const orders::Request request = fixture::long_route_request(work.plant);
    const RowSource source(work.plant, work.engine, request);
    const auto full = work.engine.cost_in_full(source.rows().front());
    const auto key = [](const engine::LineAmount& line) {
        return std::tuple(line.step, line.model, line.line, line.ply.value_or(0));
    };
    CHECK(std::is_sorted(full->lines.begin(), full->lines.end(),
                         [&](const auto& left, const auto& right) { return key(left) < key(right); }));
    CHECK(full->lines.front().step == 0);
    CHECK(full->lines.back().step > 1);
}

TEST_CASE("no way that was not chosen costs less than the cheapest") {
    const Work work;
    for (const auto& request : many_requests(work.plant)) {
        const RowSource source(work.plant, work.engine, request);
        if (source.rows().empty()) continue;
        const auto outcomes = work.engine.cost(source.rows(), 1);
        const std::size_t ways = source.layout().candidates.size();
        for (std::size_t first = 0; first < outcomes.size(); first += ways) {
            Money least = outcomes[first].cost;
            for (std::size_t i = first; i < first + ways; ++i) least = std::min(least, outcomes[i].cost);
            for (std::size_t i = first; i < first + ways; ++i)
                CHECK(work.engine.cost_in_full(source.rows()[i])->cost >= least);
        }
    }
}

TEST_CASE("a run that was measured as it was laid out costs what the quote costs") {
    const Work work;
    const orders::Request request = fixture::long_route_request(work.plant);
    const RowSource source(work.plant, work.engine, request);
    const engine::Row& row = source.rows().front();
    const auto quoted = work.engine.cost_in_full(row);
    const engine::MeasuredRun run{quoted->fed,       quoted->good,        quoted->web_length_m, quoted->web_area_m2,
                                  quoted->issued_kg, quoted->adhesive_kg, quoted->losses};
    CHECK(work.engine.cost_in_full(row, run)->cost == quoted->cost);
}

TEST_CASE("a run that was measured with more paper costs more, by that paper alone where nothing else stands on it") {
    const Work work;
    const orders::Request request = fixture::box_request(work.plant);
    const RowSource source(work.plant, work.engine, request);
    const engine::Row& row = source.rows().front();
    const auto quoted = work.engine.cost_in_full(row);
    engine::MeasuredRun run{quoted->fed,       quoted->good,        quoted->web_length_m, quoted->web_area_m2,
                            quoted->issued_kg, quoted->adhesive_kg, quoted->losses};
    run.issued_kg[0] += 100;
    const double dearer = (work.engine.cost_in_full(row, run)->cost - quoted->cost).to_double();
    CHECK(dearer == Approx(100 * row.order->layout->board.plies[0].price_per_kg).margin(0.0001));
}

TEST_CASE("the allowances of a costed row are those of its machines") {
    const Work work;
    const orders::Request request = fixture::box_request(work.plant);
    const RowSource source(work.plant, work.engine, request);
    const engine::Row& row = source.rows().front();
    const auto allowed = work.engine.cost_in_full(row)->allowances;
    CHECK(allowed.order_change_m == row.candidate->corrugator->order_change_m);
    CHECK(allowed.roll_loss == row.candidate->corrugator->roll_loss);
    CHECK(allowed.run_waste ==
          std::vector<double>{row.candidate->corrugator->run_waste, row.candidate->route->converters[0]->run_waste, 0});
    CHECK(allowed.setup_sheets[1] == row.candidate->route->converters[0]->setup_sheets);
}
