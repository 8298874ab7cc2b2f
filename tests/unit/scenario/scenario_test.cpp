// An order in a way of making it that differs from its quote: what each override moves, and what it leaves.
#include "host/scenario/scenario.hpp"

#include <catch2/catch.hpp>

#include <memory>

#include "ledger/values/error.hpp"
#include "tests/support/row_source.hpp"
#include "tests/support/small_plant.hpp"

using namespace flutebook;
using scenario::Overrides;
using scenario::Scenario;

namespace {

// A box as it is quoted: the first way of the layout at the first quantity.
struct QuotedBox {
    plant::Plant plant = fixture::small_plant();
    engine::Engine engine = engine::Engine::start(plant, fixture::built_plugins());
    orders::Request request = fixture::box_request(plant);
    fixture::RowSource source{plant, engine, request};
    orders::OrderRecord order{};

    QuotedBox() {
        const auto& way = *source.rows()[0].candidate;
        order.number = "4711";
        order.quote = "Q000001";
        order.quantity = request.quantities[0];
        order.corrugator = way.corrugator->code;
        static_cast<orders::SheetCut&>(order) = way;
        order.route = way.route_codes();
    }

    engine::Costing quoted() const { return *engine.cost_in_full(source.rows()[0]); }
    engine::Costing cost(const Overrides& overrides) const {
        return Scenario(engine, {plant, request, order}, overrides).cost();
    }
};

// What one model charges.
Money charged_by(const QuotedBox& box, const engine::Costing& costing, const std::string& model) {
    Money sum;
    for (const auto& line : costing.lines)
        if (box.engine.graph().models[line.model].id == model) sum += line.amount;
    return sum;
}

}  // namespace

TEST_CASE("a scenario without overrides costs what was quoted") {
    const QuotedBox box;
    REQUIRE(box.cost({box.order.quantity}).cost == box.quoted().cost);
}

TEST_CASE("a paper's price moves what paper costs, and nothing that is charged by machine") {
    const QuotedBox box;
    Overrides dearer{box.order.quantity};
    dearer.plant.prices = {{box.plant.papers[box.source.layout().board.plies[0].paper].code, 9000}};
    const auto costing = box.cost(dearer);
    REQUIRE(charged_by(box, costing, "paper") > charged_by(box, box.quoted(), "paper"));
    REQUIRE(charged_by(box, costing, "running") == charged_by(box, box.quoted(), "running"));
}

TEST_CASE("a machine set up twice is charged for two setups, and runs as long as before") {
    const QuotedBox box;
    Overrides twice{box.order.quantity};
    auto corrugator = box.plant.corrugators[0];
    for (const auto& item : box.plant.corrugators)
        if (item.code == box.order.corrugator) corrugator = item;
    corrugator.order_change_min *= 2;
    twice.plant.corrugators = {corrugator};
    const auto costing = box.cost(twice);
    REQUIRE(charged_by(box, costing, "setup") > charged_by(box, box.quoted(), "setup"));
    REQUIRE(charged_by(box, costing, "running") == charged_by(box, box.quoted(), "running"));
}

TEST_CASE("a web cut from a wider roll takes more paper for the same boxes") {
    const QuotedBox box;
    Overrides wider{box.order.quantity};
    wider.web = scenario::WebOverride{box.order.roll_width_mm + 100, box.order.outs};
    REQUIRE(box.cost(wider).issued_kg[0] > box.quoted().issued_kg[0]);
    REQUIRE(box.cost(wider).good.back() == box.quoted().good.back());
}

TEST_CASE("a measured run is costed in place of the run that was laid out") {
    const QuotedBox box;
    const auto quoted = box.quoted();
    Overrides measured{box.order.quantity};
    measured.run = engine::MeasuredRun{quoted.fed,         quoted.good,      2 * quoted.web_length_m,
                                       quoted.web_area_m2, quoted.issued_kg, quoted.adhesive_kg,
                                       quoted.losses};
    const auto costing = box.cost(measured);
    REQUIRE(costing.web_length_m == 2 * quoted.web_length_m);
    REQUIRE(charged_by(box, costing, "running") > charged_by(box, quoted, "running"));
    REQUIRE(charged_by(box, costing, "paper") == charged_by(box, quoted, "paper"));
}

TEST_CASE("a setting counts in the engine that is started with the overridden plant") {
    const QuotedBox box;
    const base::Place place{"request", 1, 1};
    const auto plant = scenario::with(
        box.plant,
        {.settings = {{"energy", place, {{"power_price", place, fields::GivenText{"0.34", false, place}, place}}}}});
    const auto engine = engine::Engine::start(plant, fixture::built_plugins());
    const auto costing = Scenario(engine, {plant, box.request, box.order}, {box.order.quantity}).cost();
    REQUIRE(charged_by(box, costing, "energy") > charged_by(box, box.quoted(), "energy"));
    REQUIRE(charged_by(box, costing, "paper") == charged_by(box, box.quoted(), "paper"));
}

TEST_CASE("an order whose way is no longer among those that can be laid out is refused") {
    QuotedBox box;
    box.order.chop_mm += 5;
    REQUIRE_THROWS_AS(box.cost({box.order.quantity}), LedgerError);
}
