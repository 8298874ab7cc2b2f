// Models that go wrong while they evaluate: the order that brought it out gets no quote, all others get theirs.
#include <cfenv>
#include <cfloat>

#include "host/quoting/quote.hpp"
#include "tests/bad_plugins/says.hpp"
#include "tests/bad_plugins/trial.hpp"
#include "tests/support/small_plant.hpp"

using namespace flutebook;
using bad::says;
using bad::Trial;

namespace {

// A plugin that stands in for the installed one of this name, or beside the good ones under its own.
void check_fault(const Trial& trial, const std::string& way, const std::string& model,
                 const std::vector<std::string>& cause) {
    REQUIRE(trial.refusal() == "");
    CHECK_THAT(trial.fault(), says(way, model, cause));
    CHECK(trial.others_go_on());
    CHECK(trial.host_lives_on());
}

void check_spoilt_run(const std::string& way, const std::vector<std::string>& cause) {
    check_fault(Trial(way), way, "run", cause);
}

void check_added(const std::string& way, const std::vector<std::string>& cause) {
    check_fault(Trial(way, {way}), way, way, cause);
}

}  // namespace

TEST_CASE("a model that throws refuses its own quote and no other") {
    check_added("throws", {"reported a fault of its own", "found 1"});
}

TEST_CASE("an exception that leaves a model is stopped at the border") {
    check_spoilt_run("throws_past_the_border", {"threw an exception"});
}

TEST_CASE("a model that returns a fault refuses its own quote and no other") {
    check_added("returns_a_fault", {"reported a fault of its own", "found 7"});
}

TEST_CASE("a number left unwritten refuses the quote, naming the number and its step") {
    check_spoilt_run("leaves_nan", {"left run.good of step 0 without a number"});
}

TEST_CASE("an infinite number refuses the quote") {
    check_spoilt_run("gives_infinity", {"out of range", "its web.length is inf"});
}

TEST_CASE("a number outside the range that its model promised refuses the quote") {
    check_spoilt_run("leaves_its_range", {"out of range", "its run.fed of step 1 is -1, it promised 0 to "});
}

TEST_CASE("a number outside the range that its taker asks for refuses the quote, naming both models") {
    const Trial trial("asks_for_less", {"giver", "taker"});
    check_fault(trial, "asks_for_less", "taker",
                {"out of range", "own.number is 2, it takes 0 to 1", "/asks_for_less/plugins/giver.so: model giver"});
}

TEST_CASE("a kilogram that is lost is missed, with the step where it went") {
    check_spoilt_run("loses_a_kilogram", {"mass does not balance: 1 kg vanish at step 1"});
}

TEST_CASE("a kilogram that is shed and was never there is found, with its step") {
    check_spoilt_run("finds_a_kilogram", {"mass does not balance: 1 kg come from nowhere at step 0"});
}

TEST_CASE("a loss below zero refuses the quote even where the mass balances") {
    check_spoilt_run("sheds_below_zero", {"a loss is below zero", "of setup at step 1"});
}

TEST_CASE("a model that changes the rounding mode refuses its quote, and the host rounds as before") {
    check_spoilt_run("changes_rounding", {"changed the rounding mode"});
    CHECK(std::fegetround() == FE_TONEAREST);
}

TEST_CASE("a model that flushes small numbers to zero refuses its quote, and the host keeps its small numbers") {
    check_spoilt_run("flushes_when_called", {"changed the treatment of very small numbers"});
    const volatile double least = DBL_MIN;
    CHECK(least / 2 > 0);
}

TEST_CASE("a model that arms a trap refuses its quote, and the host divides by zero unharmed") {
    check_spoilt_run("arms_traps", {"changed the treatment of very small numbers or of traps"});
    CHECK(fegetexcept() == 0);
}

TEST_CASE("an amount beyond what is kept refuses the quote, naming the line") {
    check_added("charges_too_much", {"line gold of step 2 is no amount", "3000000 x 30000", "below 9e10"});
}

TEST_CASE("a quantity that is no number refuses the quote, naming the line") {
    check_added("charges_no_number", {"line ink of step 0 is no amount", "no number x 2"});
}

TEST_CASE("a recovery that adds to the cost refuses the quote, naming the model and the line") {
    check_added("recovers_a_cost",
                {"line toll of step 2 adds to the cost, but recovery is income", "found 3 x 2; keep it at or below 0"});
}

TEST_CASE("a row refused for a reason that is not declared is a fault") {
    check_added("refuses_for_no_reason", {"refused a row for a reason it does not declare", "found 3"});
}

TEST_CASE("a row refused for a declared reason is a candidate less, and the others go on") {
    Trial trial("refuses_a_row", {"refuses_a_row"});
    CHECK(trial.fault() == "");
    CHECK(trial.others_go_on());

    const auto& plant = trial.plant();
    const auto engine = engine::Engine::start(plant, FLUTEBOOK_PLUGIN_DIR);
    orders::Request request = fixture::box_request(plant);
    const auto layout = geometry::lay_out(plant, request);
    const engine::Order order = engine.order(plant, request, layout, 5000);
    std::vector<engine::Row> rows;
    for (const auto& candidate : layout.candidates) rows.push_back({&order, &candidate});
    const auto outcomes = engine.cost(rows, 1);
    std::size_t refused = 0;
    for (std::size_t r = 0; r < rows.size(); ++r) {
        const bool is_refused = outcomes[r].state == engine::Outcome::State::refused;
        CHECK(is_refused == (rows[r].candidate->trim_mm > 200));
        refused += is_refused ? 1 : 0;
        CHECK(engine.cost_in_full(rows[r]).has_value() == !is_refused);
        if (!is_refused) continue;
        const contract::Model& model = engine.graph().models[outcomes[r].model];
        CHECK(model.id == "refuses_a_row");
        CHECK(model.reasons[outcomes[r].reason] == "more than 200 mm of trim");
    }
    CHECK(refused > 0);
    CHECK(refused < rows.size());
    CHECK(trial.host_lives_on());
}

TEST_CASE("if every way of an order is refused, the answer gives the reason of each") {
    Trial trial("refuses_a_row", {"refuses_a_row"});
    for (auto& paper : trial.plant().papers) paper.roll_widths_mm = {2450};
    const auto engine = engine::Engine::start(trial.plant(), FLUTEBOOK_PLUGIN_DIR);
    const auto request = fixture::box_request(trial.plant());
    const auto answer = quoting::quote(trial.plant(), engine, request, {1, std::nullopt});
    REQUIRE(answer.quantities.size() == 2);
    CHECK(answer.quantities[0].quote);
    REQUIRE(answer.quantities[1].unmakeable);
    for (const auto& refused : answer.quantities[1].unmakeable->refused)
        CHECK(refused.limit == "refuses_a_row: more than 200 mm of trim");
    CHECK(answer.quantities[1].unmakeable->refused.size() > 0);
}

TEST_CASE("a row costs the same whether others of its block are refused or not") {
    Trial trial("refuses_a_row", {"refuses_a_row"});
    plant::Plant calm = trial.plant();
    calm.models.pop_back();
    const auto request = fixture::box_request(calm);
    const auto layout = geometry::lay_out(calm, request);
    const auto costs = [&](const plant::Plant& plant) {
        const auto engine = engine::Engine::start(plant, FLUTEBOOK_PLUGIN_DIR);
        std::vector<engine::Order> orders;
        for (const double quantity : {500.0, 5000.0}) orders.push_back(engine.order(plant, request, layout, quantity));
        std::vector<engine::Row> rows;
        for (const auto& candidate : layout.candidates)
            for (const auto& order : orders) rows.push_back({&order, &candidate});
        return engine.cost(rows, 1);
    };
    const auto all = costs(calm);
    const auto some = costs(trial.plant());
    REQUIRE(all.size() == some.size());
    for (std::size_t r = 0; r < all.size(); ++r)
        if (some[r].state == engine::Outcome::State::costed) CHECK(some[r].cost == all[r].cost);
}
