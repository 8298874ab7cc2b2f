// The pieces of a set in the engine: what is paid once stands on the first piece alone, and its late models know what
// the other pieces cost.
#include <catch2/catch.hpp>

#include <algorithm>
#include <memory>
#include <string>

#include "host/engine/costing/line_totals.hpp"
#include "host/engine/engine.hpp"
#include "host/engine/facts.hpp"
#include "tests/support/row_source.hpp"
#include "tests/support/small_plant.hpp"

using namespace flutebook;
using contract::CostClass;
using engine::Costing;
using engine::Engine;
using engine::PieceOfSet;

namespace {

// Dispatch takes an hour; no order may cost less than `least`, which a model of the SDK's examples charges.
plant::Plant plant_with_least(const std::string& least) {
    plant::Plant plant = fixture::small_plant();
    plant.dispatch = {60, {30, 12}, {}};
    plant.folder = FLUTEBOOK_BINARY_DIR "/tests/sdk/examples";
    plant.models.push_back(fixture::model_entry("least_charge", {{"least", least}}));
    return plant;
}

// One order at one candidate, as any piece of a set.
class PieceRows {
public:
    explicit PieceRows(const std::string& least)
        : plant_(plant_with_least(least)),
          engine_(Engine::start(plant_, fixture::built_plugins())),
          request_(fixture::box_request(plant_)),
          layout_(geometry::lay_out(plant_, request_)) {}

    [[nodiscard]] engine::Order order(const PieceOfSet& piece) const {
        return engine_.order(plant_, request_, layout_, request_.quantities.front(), piece);
    }
    [[nodiscard]] Costing cost(const PieceOfSet& piece) const {
        const engine::Order ordered = order(piece);
        return engine_.cost_in_full({&ordered, &layout_.candidates.front()}).value();
    }
    [[nodiscard]] Money charged(const Costing& costing, const std::string& line) const {
        Money sum;
        for (const engine::LineAmount& item : costing.lines)
            if (engine_.graph().models[item.model].lines[item.line].name == line) sum += item.amount;
        return sum;
    }
    [[nodiscard]] const Engine& engine() const { return engine_; }
    [[nodiscard]] const geometry::Layout& layout() const { return layout_; }

private:
    plant::Plant plant_;
    Engine engine_;
    orders::Request request_;
    geometry::Layout layout_;
};

Money sum_of(const engine::ClassCosts& costs) {
    Money sum;
    for (const Money cost : costs) sum += cost;
    return sum;
}

}  // namespace

TEST_CASE("order.piece and order.pieces count the pieces of a set from 1, and are 1 and 1 for a box of one") {
    const PieceRows rows("0");
    const auto value = [&](const char* name, const PieceOfSet& piece) {
        const engine::Order order = rows.order(piece);
        const engine::Row row{&order, &rows.layout().candidates.front()};
        double result = 0;
        engine::facts().at(engine::fact_index(name)).fill({&row, 1}, 0, &result);
        return result;
    };
    CHECK(value("order.piece", {}) == 1);
    CHECK(value("order.pieces", {}) == 1);
    CHECK(value("order.piece", {2, 3}) == 3);
    CHECK(value("order.pieces", {2, 3}) == 3);
}

TEST_CASE("what is charged by the run or the period at dispatch stands on the first piece of a set alone") {
    const PieceRows rows("0");
    const Costing first = rows.cost({0, 2});
    const Costing second = rows.cost({1, 2});
    const std::size_t dispatch = first.fed.size() - 1;
    // An hour of dispatch at 30 and 12.
    CHECK((first.cost - second.cost) == Money::of_ten_thousandths(42'0000));
    for (const engine::LineAmount& line : second.lines) CHECK(line.step != dispatch);
    std::size_t at_dispatch = 0;
    for (const engine::LineAmount& line : first.lines) at_dispatch += line.step == dispatch ? 1 : 0;
    CHECK(at_dispatch == 2);
    CHECK(second.lines.size() + 2 == first.lines.size());
    CHECK(rows.cost({}).cost == first.cost);
}

TEST_CASE("a late model charges the first piece of a set alone, and its cost.all at dispatch holds the other pieces") {
    const PieceRows rows("5000");
    const Costing second = rows.cost({1, 2});
    const Costing third = rows.cost({2, 3});
    CHECK(rows.charged(second, "least_charge") == Money{});
    CHECK(third.cost == second.cost);

    const Money alone = rows.charged(rows.cost({0, 1}), "least_charge");
    REQUIRE(alone > second.cost);
    const auto others = engine::costs_by_class(rows.engine().graph(), second);
    CHECK(sum_of(others) == second.cost);
    CHECK(rows.charged(rows.cost({0, 2, others}), "least_charge") == alone - second.cost);
    CHECK(second.cost + rows.cost({0, 2, others}).cost == Money::of_ten_thousandths(5000'0000));
}

TEST_CASE("the cost by class of a costing adds up to its cost") {
    const PieceRows rows("0");
    const Costing costing = rows.cost({});
    const auto costs = engine::costs_by_class(rows.engine().graph(), costing);
    CHECK(sum_of(costs) == costing.cost);
    CHECK(costs.at(static_cast<std::size_t>(CostClass::recovery)) < Money{});
    CHECK(costs.at(static_cast<std::size_t>(CostClass::material)) > Money{});
}

TEST_CASE("first pieces and others cost the same in one call, on one, two and eight threads, as each alone") {
    const PieceRows rows("5000");
    std::vector<engine::Order> orders;
    for (std::size_t i = 0; i < 60; ++i) orders.push_back(rows.order({i % 3, 3}));
    std::vector<engine::Row> all;
    for (const engine::Order& order : orders)
        for (const geometry::Candidate& candidate : rows.layout().candidates) all.push_back({&order, &candidate});
    const auto alone = [&](const engine::Row& row) { return rows.engine().cost({&row, 1}, 1).front(); };
    for (const unsigned threads : {1U, 2U, 8U}) {
        const auto together = rows.engine().cost(all, threads);
        for (std::size_t r = 0; r < all.size(); ++r) {
            CHECK(together[r].cost == alone(all[r]).cost);
            CHECK(together[r].before_late == alone(all[r]).before_late);
        }
    }
}
