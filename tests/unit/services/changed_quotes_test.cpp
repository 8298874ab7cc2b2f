// Two answers compared: which quantities, figures and lines are told.
#include "host/services/quoting/changed_quotes.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

using namespace flutebook;
using namespace flutebook::answers;
using namespace flutebook::services;
using Json = nlohmann::ordered_json;

namespace {

Json line(const char* plugin, int step, Json ply, double quantity, double rate, double amount) {
    return {{"plugin", plugin},    {"line", plugin},          {"step", step},         {"ply", std::move(ply)},
            {"class", "material"}, {"behaviour", "per-unit"}, {"quantity", quantity}, {"unit", "kg"},
            {"rate", rate},        {"amount", amount}};
}

// One quantity of 500, made on C1 and FG1, with a line of a ply, of the folder-gluer and of dispatch.
Json made_quote() {
    Json result;
    result["quantity"] = 500;
    result["corrugator"] = "C1";
    result["route"] = {"FG1"};
    result["mass_kg"] = {{"loss", {{"side-trim", 20.5}}}};
    result["lines"] = {line("paper", 0, 1, 100, 0.5, 50), line("ink", 1, nullptr, 2, 4, 8),
                       line("freight", 2, nullptr, 1, 28, 28)};
    result["cost"] = 86;
    result["cost_per_thousand"] = 172;
    result["price_per_thousand"] = 200;
    return result;
}

Json refused_quote() {
    return {{"quantity", 500}, {"refused", {{{"candidate", "C1, FG1"}, {"limit", "sheet too wide"}}}}};
}

Json answer(Json quote) {
    return {{"request", "R-1"}, {"quotes", {std::move(quote)}}};
}

ChangedQuantity between(const Json& was, const Json& now) {
    return changed_quantities(answer(was), answer(now)).at(0);
}

}  // namespace

TEST_CASE("the same answer twice differs in nothing") {
    CHECK_FALSE(between(made_quote(), made_quote()).differs());
    CHECK_FALSE(between(refused_quote(), refused_quote()).differs());
}

TEST_CASE("a dearer line is told with what it comes to, and the totals it moves as figures") {
    Json now = made_quote();
    now["lines"][0]["rate"] = 0.6;
    now["lines"][0]["amount"] = 60;
    now["cost"] = 96;
    const ChangedQuantity changed_quantity = between(made_quote(), now);
    REQUIRE(changed_quantity.lines.size() == 1);
    CHECK(changed_quantity.lines[0].plugin == "paper");
    CHECK(changed_quantity.lines[0].ply == 1U);
    CHECK(changed_quantity.lines[0].by() == Money::of_ten_thousandths(100000));
    REQUIRE(changed_quantity.figures.size() == 1);
    CHECK(changed_quantity.figures[0].path == "cost");
}

TEST_CASE("dispatch is dispatch, though a machine was put before it") {
    Json now = made_quote();
    now["route"] = {"DC1", "FG1"};
    now["lines"] = {line("paper", 0, 1, 100, 0.5, 50), line("ink", 1, nullptr, 2, 4, 8),
                    line("freight", 3, nullptr, 1, 28, 28)};
    CHECK(between(made_quote(), now).lines.empty());
}

TEST_CASE("a line that is charged no more is told with what it was") {
    Json now = made_quote();
    now["lines"].erase(1);
    const ChangedQuantity changed_quantity = between(made_quote(), now);
    REQUIRE(changed_quantity.lines.size() == 1);
    CHECK(changed_quantity.lines[0].was->machine == "FG1");
    CHECK_FALSE(changed_quantity.lines[0].now.has_value());
    CHECK(changed_quantity.lines[0].by() == Money::of_ten_thousandths(-80000));
}

TEST_CASE("a quantity that nothing can make any more is told with the limits that stop it") {
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
    Json now = refused_quote();
    now["refused"][0]["limit"] = "too few colours";
    REQUIRE(between(refused_quote(), now).figures.size() == 1);
    CHECK(between(refused_quote(), now).figures[0].path == "refused[1].limit");
}

TEST_CASE("where nothing is answered today, every quantity that was made is told") {
    const auto all = changed_quantities(answer(made_quote()), Json());
    REQUIRE(all.size() == 1);
    CHECK(all[0].differs());
}

TEST_CASE("what a line was explained by is no figure of its own") {
    Json now = made_quote();
    now["explain"] = {{{"quantity", 1}}};
    CHECK_FALSE(between(made_quote(), now).differs());
}
