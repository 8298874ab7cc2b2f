// Two answers compared: which quantities, figures and lines are told.
#include "host/saved_quotes/changes.hpp"

#include <catch2/catch.hpp>

using namespace flutebook;
using namespace flutebook::answers;
using namespace flutebook::saved_quotes;

namespace {

Money euros(std::int64_t whole) {
    return Money::of_ten_thousandths(whole * 10000);
}

CostLine line(const char* plugin, std::size_t step, std::optional<std::size_t> ply, double quantity, double rate,
              std::int64_t amount) {
    CostLine result{};
    result.plugin = plugin;
    result.line = plugin;
    result.step = step;
    result.ply = ply;
    result.quantity = quantity;
    result.unit = "kg";
    result.rate = rate;
    result.amount = euros(amount);
    return result;
}

// One quantity of 500, made on C1 and FG1, with a line of a ply, of the folder-gluer and of dispatch.
Quote made_quote() {
    Quote result{};
    result.quantity = 500;
    result.corrugator = "C1";
    result.route = {"FG1"};
    result.mass.losses = {{"side-trim", "side trim", {20.5, 0}, 20.5}};
    result.lines = {line("paper", 0, 1, 100, 0.5, 50), line("ink", 1, std::nullopt, 2, 4, 8),
                    line("freight", 2, std::nullopt, 1, 28, 28)};
    result.cost = euros(86);
    result.cost_per_thousand = euros(172);
    result.price_per_thousand = euros(200);
    return result;
}

Unmakeable refused_quote() {
    return {500, {{"C1, FG1", "sheet too wide"}}};
}

RequestAnswer answer(const Quote& quote) {
    RequestAnswer result{};
    result.quantities = {{quote, std::nullopt}};
    return result;
}

RequestAnswer answer(const Unmakeable& unmakeable) {
    RequestAnswer result{};
    result.quantities = {{std::nullopt, unmakeable}};
    return result;
}

template <typename Was, typename Now>
ChangedQuantity between(const Was& was, const Now& now) {
    const RequestAnswer today = answer(now);
    return changed_quantities(answer(was), &today).at(0);
}

}  // namespace

TEST_CASE("the same answer twice differs in nothing") {
    CHECK_FALSE(between(made_quote(), made_quote()).differs());
    CHECK_FALSE(between(refused_quote(), refused_quote()).differs());
}

TEST_CASE("a dearer line is told with what it comes to, and the totals it moves as figures") {
    Quote now = made_quote();
    now.lines[0].rate = 0.6;
    now.lines[0].amount = euros(60);
    now.cost = euros(96);
    const ChangedQuantity changed_quantity = between(made_quote(), now);
    REQUIRE(changed_quantity.lines.size() == 1);
    CHECK(changed_quantity.lines[0].plugin == "paper");
    CHECK(changed_quantity.lines[0].ply == 1U);
    CHECK(changed_quantity.lines[0].by() == Money::of_ten_thousandths(100000));
    REQUIRE(changed_quantity.figures.size() == 1);
    CHECK(changed_quantity.figures[0].path == "cost");
}

TEST_CASE("dispatch is dispatch, though a machine was put before it") {
    Quote now = made_quote();
    now.route = {"DC1", "FG1"};
    now.lines[2].step = 3;
    CHECK(between(made_quote(), now).lines.empty());
}

TEST_CASE("a line that is charged no more is told with what it was") {
    Quote now = made_quote();
    now.lines.erase(now.lines.begin() + 1);
    const ChangedQuantity changed_quantity = between(made_quote(), now);
    REQUIRE(changed_quantity.lines.size() == 1);
    CHECK(changed_quantity.lines[0].was->machine == "FG1");
    CHECK_FALSE(changed_quantity.lines[0].now.has_value());
    CHECK(changed_quantity.lines[0].by() == Money::of_ten_thousandths(-80000));
}

TEST_CASE("a quantity that can no longer be made is reported with the limits that prevent it") {
    const ChangedQuantity changed_quantity = between(made_quote(), refused_quote());
    CHECK(changed_quantity.differs());
    CHECK(changed_quantity.was->price_per_thousand == Money::of_ten_thousandths(2000000));
    CHECK_FALSE(changed_quantity.now.has_value());
    CHECK(changed_quantity.limits == std::vector<std::string>{"C1, FG1: sheet too wide"});
}

TEST_CASE("a quantity that can be made by now has no limits to tell") {
    const ChangedQuantity changed_quantity = between(refused_quote(), made_quote());
    CHECK(changed_quantity.differs());
    CHECK(changed_quantity.now.has_value());
    CHECK(changed_quantity.limits.empty());
}

TEST_CASE("another limit of what could not be made anyway is told as a figure") {
    Unmakeable now = refused_quote();
    now.refused[0].limit = "too few colours";
    REQUIRE(between(refused_quote(), now).figures.size() == 1);
    CHECK(between(refused_quote(), now).figures[0].path == "refused[1].limit");
}

TEST_CASE("where nothing is answered today, every quantity that was made is told") {
    const auto all = changed_quantities(answer(made_quote()), nullptr);
    REQUIRE(all.size() == 1);
    CHECK(all[0].differs());
}

TEST_CASE("what a line was explained by is no figure of its own") {
    Quote now = made_quote();
    now.trails.emplace_back();
    CHECK_FALSE(between(made_quote(), now).differs());
}

TEST_CASE("a figure under a key that only one of two documents has is told, and makes no quote another") {
    Quote now = made_quote();
    now.mass.losses.push_back({"core-waste", "core waste", {0, 0}, 0});
    const ChangedQuantity added = between(made_quote(), now);
    REQUIRE(added.figures.size() == 1);
    CHECK(added.figures[0].path == "mass_kg.loss.core-waste");
    CHECK_FALSE(added.figures[0].was.has_value());
    CHECK_FALSE(added.differs());
    const ChangedQuantity gone = between(now, made_quote());
    REQUIRE(gone.figures.size() == 1);
    CHECK_FALSE(gone.figures[0].now.has_value());
    CHECK_FALSE(gone.differs());
}

TEST_CASE("another title of a line or of a loss is no difference") {
    Quote now = made_quote();
    now.lines[0].title = "board paper";
    now.mass.losses[0].title = "trimmed edges";
    CHECK(between(made_quote(), now).figures.empty());
    CHECK_FALSE(between(made_quote(), now).differs());
}

TEST_CASE("a figure is compared with its unit") {
    Quote now = made_quote();
    now.mass.losses[0].total_kg = 21;
    const ChangedQuantity changed = between(made_quote(), now);
    REQUIRE(changed.figures.size() == 1);
    CHECK(changed.figures[0].now->unit == "kg");
    CHECK(changed.differs());
}
