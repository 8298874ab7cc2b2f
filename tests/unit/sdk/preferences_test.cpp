// A plant lets one model's number stand in for a fact, a setting, or another model's number. What comes out is what the
// plant would have got with that number in its own files, to the last ten-thousandth.
#include <catch2/catch.hpp>

#include <algorithm>
#include <cstdlib>

#include "tests/unit/sdk/sample.hpp"

using namespace flutebook;
using namespace flutebook::sdk_test;

namespace {

void prefer(plant::Plant& plant, const std::string& name, const std::string& model) {
    plant.preferences.push_back({name, model, {"plugins.yaml", 30, 11}});
}

std::string& setting(plant::Plant& plant, const std::string& model, const std::string& name) {
    for (auto& entry : plant.models)
        if (entry.id == model)
            for (auto& given : entry.settings)
                if (given.name == name) return text_of(given);
    FAIL(model << "." << name << " is not given");
    return plant.name;
}

void drop_setting(plant::Plant& plant, const std::string& model, const std::string& name) {
    for (auto& entry : plant.models)
        if (entry.id == model) std::erase_if(entry.settings, [&](const auto& given) { return given.name == name; });
}

std::vector<orders::Request> sample_orders(const plant::Plant& plant) {
    return {fixture::box_request(plant), fixture::sheet_request(plant), fixture::long_route_request(plant)};
}

void check_same_costs(const plant::Plant& left, const plant::Plant& right) {
    for (const orders::Request& request : sample_orders(left)) {
        INFO(request.number);
        CHECK(costs(left, request) == costs(right, request));
    }
}

}  // namespace

TEST_CASE("a house rule for waste replaces the fact, and gets the value that it replaces") {
    plant::Plant ruled = sample_plant();
    ruled.models.push_back(fixture::model_entry("houserule", {{"more", "0.01"}}));
    prefer(ruled, "step.run_waste", "houserule");
    plant::Plant written = sample_plant();
    for (auto& converter : written.converters)
        if (converter.kind == plant::Converter::Kind::die_cutter) converter.run_waste += 0.01;
    check_same_costs(ruled, written);
    const plant::Plant plain = sample_plant();
    CHECK(costs(ruled, fixture::long_route_request(ruled)) != costs(plain, fixture::long_route_request(plain)));
}

TEST_CASE("a model that gives what a fact gives is not taken silently") {
    plant::Plant plant = sample_plant();
    plant.models.push_back(fixture::model_entry("houserule"));
    CHECK_THAT(refusal(plant), Catch::Contains("step.run_waste: given twice: by the host and by ") &&
                                   Catch::Contains("houserule.so: model houserule") &&
                                   Catch::Contains("prefer: {step.run_waste: "));
}

TEST_CASE("a tariff replaces a setting, which the plant then need not give") {
    plant::Plant tariffed = sample_plant();
    tariffed.models.push_back(fixture::model_entry("tariff"));
    prefer(tariffed, "energy.power_price", "tariff");
    drop_setting(tariffed, "energy", "power_price");
    REQUIRE(refusal(tariffed) == "");

    plant::Plant plain = sample_plant();
    orders::Request small = fixture::box_request(plain);
    small.quantities = {500};
    setting(plain, "energy", "power_price") = "0.25";
    CHECK(costs(tariffed, small) == costs(plain, small));
    orders::Request large = fixture::box_request(plain);
    large.quantities = {20000};
    setting(plain, "energy", "power_price") = "0.125";
    CHECK(costs(tariffed, large) == costs(plain, large));
}

TEST_CASE("a surcharge replaces a setting, and gets the value that it replaces") {
    plant::Plant charged = sample_plant();
    charged.models.push_back(fixture::model_entry("surcharge"));
    prefer(charged, "energy.power_price", "surcharge");
    setting(charged, "energy", "power_price") = "0.25";
    plant::Plant plain = sample_plant();
    setting(plain, "energy", "power_price") = "0.375";
    check_same_costs(charged, plain);
}

TEST_CASE("a setting that its replacer builds on must be given") {
    plant::Plant plant = sample_plant();
    plant.models.push_back(fixture::model_entry("surcharge"));
    prefer(plant, "energy.power_price", "surcharge");
    drop_setting(plant, "energy", "power_price");
    CHECK_THAT(refusal(plant), Catch::Contains("plugins.yaml:2:5: plugins.energy.power_price: missing"));
}

TEST_CASE("a model that gives what a setting gives is not taken silently") {
    plant::Plant plant = sample_plant();
    plant.models.push_back(fixture::model_entry("tariff"));
    CHECK_THAT(refusal(plant), Catch::Contains("energy.power_price: given twice: by a setting of ") &&
                                   Catch::Contains("energy.so: model energy") &&
                                   Catch::Contains("tariff.so: model tariff"));
}

TEST_CASE("a setting is no fact: only who replaces it may need it") {
    plant::Plant plant = sample_plant();
    plant.models.push_back(fixture::model_entry("surcharge"));
    plant.models.push_back(fixture::model_entry("tariff"));
    prefer(plant, "energy.power_price", "tariff");
    CHECK_THAT(refusal(plant), Catch::Contains("energy.power_price: given twice: by a setting of "));
}

TEST_CASE("a model replaces another model's number, gets it, and all others take the new one") {
    plant::Plant slow = sample_plant();
    slow.models.push_back(fixture::model_entry("slowclock"));
    prefer(slow, "run.hours", "slowclock");
    // The hours go to power alone: twice the hours cost what twice the power does.
    plant::Plant strong = sample_plant();
    for (auto& corrugator : strong.corrugators) corrugator.power_kw *= 2;
    for (auto& converter : strong.converters) converter.power_kw *= 2;
    for (const orders::Request& request : sample_orders(slow)) {
        const auto left = costs(slow, request);
        const auto right = costs(strong, request);
        REQUIRE(left.size() == right.size());
        // Hours go through minutes and back, so a line may round the other way.
        for (std::size_t r = 0; r < left.size(); ++r) CHECK(std::abs(left[r] - right[r]) <= 4);
    }
    const plant::Plant plain = sample_plant();
    CHECK(costs(slow, fixture::box_request(slow)) != costs(plain, fixture::box_request(plain)));
}

TEST_CASE("the order of models and preferences in the file moves nothing") {
    plant::Plant plant = sample_plant();
    for (const char* id : {"houserule", "surcharge", "slowclock"}) plant.models.push_back(fixture::model_entry(id));
    prefer(plant, "step.run_waste", "houserule");
    prefer(plant, "energy.power_price", "surcharge");
    prefer(plant, "run.hours", "slowclock");
    plant::Plant turned = plant;
    std::reverse(turned.models.begin(), turned.models.end());
    std::reverse(turned.preferences.begin(), turned.preferences.end());
    check_same_costs(plant, turned);
}
