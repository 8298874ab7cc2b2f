// Settings in whole quotes: values by date, one file under two names, and a plant's own default in a table.
#include <catch2/catch.hpp>

#include <cstdlib>
#include <map>
#include <stdexcept>

#include "tests/unit/sdk/sample.hpp"

using namespace flutebook;
using namespace flutebook::sdk_test;

namespace {

fields::GivenText text(const std::string& value) {
    return {value, false, {"plugins.yaml", 5, 20}};
}

plant::GivenSetting& energy_price(plant::Plant& plant) {
    for (auto& entry : plant.models)
        if (entry.id == "energy")
            for (auto& given : entry.settings)
                if (given.name == "power_price") return given;
    throw std::logic_error("the small plant gives energy.power_price");
}

plant::GivenDates by_date(const std::vector<std::pair<base::Date, std::string>>& values) {
    plant::GivenDates result;
    for (const auto& [from, value] : values)
        result.push_back({from, {"plugins.yaml", 5, 10}, text(value), {"plugins.yaml", 5, 20}});
    return result;
}

plant::ModelSettings varnish_as(const std::string& id, const std::string& price, const std::string& grams) {
    plant::ModelSettings result = fixture::model_entry("varnish", {{"price", price}});
    result.id = id;
    if (id != "varnish") result.model = "varnish";
    result.settings.push_back(written_table("laydown", {{"default", grams}}, 4));
    return result;
}

orders::Request with_coats(orders::Request request, const std::string& model, const std::string& coats) {
    request.extras.push_back({model, {"R-5.yaml", 12, 3}, {written("coats", coats, 13, "R-5.yaml")}});
    return request;
}

}  // namespace

TEST_CASE("an order costs what it would if the value of its date stood alone in the plant's file") {
    plant::Plant dated = sample_plant();
    energy_price(dated).value = by_date({{fixture::date(2026, 1, 1), "0.15"}, {fixture::date(2026, 9, 1), "0.25"}});
    plant::Plant plain = sample_plant();
    orders::Request request = fixture::box_request(dated);
    for (const auto& [day, price] :
         {std::pair(fixture::date(2026, 8, 31), "0.15"), std::pair(fixture::date(2026, 9, 1), "0.25")}) {
        request.date = day;
        energy_price(plain).value = text(price);
        CHECK(costs(dated, request) == costs(plain, request));
    }
    energy_price(plain).value = text("0.15");
    CHECK(costs(dated, request) != costs(plain, request));
}

TEST_CASE("a model that replaces a dated setting counts before its dates") {
    plant::Plant dated = sample_plant();
    dated.models.push_back(fixture::model_entry("tariff"));
    dated.preferences.push_back({"energy.power_price", "tariff", {"plugins.yaml", 30, 11}});
    plant::Plant plain = dated;
    energy_price(dated).value = by_date({{fixture::date(2090, 1, 1), "0.15"}});
    CHECK(costs(dated, fixture::box_request(dated)) == costs(plain, fixture::box_request(plain)));
    dated.preferences.clear();
    dated.models.pop_back();
    CHECK_THAT(refusal(dated, fixture::box_request(dated)), Catch::Contains("energy.power_price has no value on"));
}

TEST_CASE("one file serves under two names, each with settings and extras of its own") {
    plant::Plant plant = sample_plant();
    plant.models.push_back(varnish_as("varnish", "2.5", "4"));
    plant.models.push_back(varnish_as("lacquer", "5", "2"));
    orders::Request request = fixture::long_route_request(plant);
    request = with_coats(with_coats(request, "varnish", "2"), "lacquer", "1");
    const engine::Engine engine = open(plant);
    const fixture::RowSource source(plant, engine, request);
    const auto costing = engine.cost_in_full(source.rows().at(0));
    std::map<std::string, Money> money;
    for (const auto& line : costing->lines) money[engine.graph().models[line.model].id] += line.amount;
    REQUIRE(money["varnish"] > Money{});
    // Half the coats, half the laydown, twice the price: half the money, within the rounding of three lines.
    CHECK(std::abs(money["varnish"].ten_thousandths() - 2 * money["lacquer"].ten_thousandths()) <= 6);
}

TEST_CASE("a file that provides a name serves under one id alone") {
    plant::Plant plant = sample_plant();
    plant::ModelSettings second = fixture::model_entry("paper2");
    second.model = "run";
    plant.models.push_back(second);
    CHECK_THAT(refusal(plant), Catch::Contains("plugins.yaml:2:5: plugins.paper2: ") &&
                                   Catch::Contains("cannot be loaded under another id: it provides"));
}

TEST_CASE("a file under a second name is pinned by that name") {
    plant::Plant plant = sample_plant();
    plant.models.push_back(varnish_as("lacquer", "5", "2"));
    plant.pinned.push_back({"lacquer", std::string(64, '0'), {"plugins.yaml", 9, 3}});
    CHECK_THAT(refusal(plant), Catch::Contains("sha256.lacquer: ") && Catch::Contains("is another file"));
}

namespace {

plant::GivenSetting table_of(const std::string& name, plant::GivenTable table) {
    return {name, {"plugins.yaml", 6, 9}, std::move(table), {"plugins.yaml", 6, 20}};
}

plant::GivenCell cell(const std::string& key, plant::GivenValue value) {
    return {key, {"plugins.yaml", 6, 21}, std::move(value)};
}

plant::Plant plant_with_terms(plant::GivenTable handling) {
    plant::Plant plant = sample_plant();
    plant::ModelSettings terms = fixture::model_entry("terms");
    terms.settings.push_back(table_of("handling", std::move(handling)));
    terms.settings.push_back(table_of("testing", {cell("B-140", text("4"))}));
    terms.settings.push_back(table_of("drawing", {cell("0201", text("3"))}));
    plant::GivenTable steps = {cell("0", text("1")), cell("1000", text("6"))};
    terms.settings.push_back(table_of("wear", {cell("FG1", std::move(steps)), cell("DC1", text("5"))}));
    plant.models.push_back(std::move(terms));
    return plant;
}

// By line, in whole money, of the first way of the first quantity.
std::map<std::string, double> terms_of(const plant::Plant& plant, const orders::Request& request) {
    const engine::Engine engine = open(plant);
    const fixture::RowSource source(plant, engine, request);
    std::map<std::string, double> result;
    const auto costing = engine.cost_in_full(source.rows().at(0));
    for (const auto& line : costing->lines) {
        const contract::Model& model = engine.graph().models[line.model];
        if (model.id == "terms") result[model.lines[line.line].name] += line.amount.to_double();
    }
    return result;
}

}  // namespace

TEST_CASE("a model gets the value of the order's customer, board and style") {
    const plant::Plant plant = plant_with_terms({cell("Quarry", text("10")), cell("default", text("20"))});
    orders::Request box = fixture::box_request(plant);
    box.customer = "Quarry";
    auto terms = terms_of(plant, box);
    CHECK(terms["handling"] == 10);
    CHECK(terms["testing"] == 4);
    CHECK(terms["drawing"] == 3);
    orders::Request outline = fixture::outline_request(plant);
    outline.customer = "";
    terms = terms_of(plant, outline);
    CHECK(terms["handling"] == 20);
    CHECK(terms["testing"] == 1);
    CHECK(terms["drawing"] == 2);
}

TEST_CASE("a machine's steps go by the number at that machine, which another model provides") {
    const plant::Plant plant = plant_with_terms({cell("default", text("20"))});
    orders::Request box = fixture::box_request(plant);
    box.route = fixture::route_of(plant, {"FG1"});
    box.quantities = {500};
    CHECK(terms_of(plant, box)["wear"] == 1);
    box.quantities = {5000};
    CHECK(terms_of(plant, box)["wear"] == 6);
    orders::Request printed = fixture::long_route_request(plant);
    CHECK(terms_of(plant, printed)["wear"] == 5 + 6);
}

TEST_CASE("an order of a customer without a value is refused, and no other") {
    const plant::Plant plant = plant_with_terms({cell("Quarry", text("10"))});
    orders::Request box = fixture::box_request(plant);
    box.customer = "Quarry";
    CHECK(refusal(plant, box).empty());
    box.customer = "Mason";
    CHECK_THAT(refusal(plant, box), Catch::Contains("customer: terms.handling has no value for `Mason`"));
}
