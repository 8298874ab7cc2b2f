// A plant with overrides: each changes what it names, and nothing else.
#include "host/scenario/plant_overrides.hpp"

#include <catch2/catch.hpp>

#include "host/base/errors.hpp"
#include "tests/support/small_plant.hpp"

using namespace flutebook;
using scenario::with;

namespace {

plant::GivenSetting setting(const std::string& name, const std::string& text) {
    return {name, {"request", 1, 1}, fields::GivenText{text, false, {"request", 1, 9}}, {"request", 1, 9}};
}

std::string text_of(const plant::Plant& plant, const std::string& model, const std::string& name) {
    for (const auto& entry : plant.models)
        if (entry.id == model) return std::get<fields::GivenText>(entry.find(name)->value).text;
    return "";
}

std::string refusal(const scenario::PlantOverrides& overrides) {
    try {
        static_cast<void>(with(fixture::small_plant(), overrides));
    } catch (const InputError& error) {
        return error.lines().front();
    }
    return "";
}

}  // namespace

TEST_CASE("without overrides a plant stays as it is") {
    const auto before = fixture::small_plant();
    const auto after = with(before, {});
    REQUIRE(after.folder == before.folder);
    REQUIRE(after.corrugators.size() == before.corrugators.size());
    REQUIRE(after.converters.size() == before.converters.size());
    REQUIRE(after.papers[0].prices.size() == before.papers[0].prices.size());
}

TEST_CASE("a machine replaces the one of its code, at its place in the list") {
    const auto before = fixture::small_plant();
    auto faster = before.converters[0];
    faster.speed_per_h *= 2;
    const auto after = with(before, {.converters = {faster}});
    REQUIRE(after.converters.size() == before.converters.size());
    REQUIRE(after.converters[0].speed_per_h == 2 * before.converters[0].speed_per_h);
    REQUIRE(after.converters[1].speed_per_h == before.converters[1].speed_per_h);
}

TEST_CASE("a machine of a new code is added after the others") {
    const auto before = fixture::small_plant();
    auto newer = before.corrugators[0];
    newer.code = "CO9";
    const auto after = with(before, {.corrugators = {newer}});
    REQUIRE(after.corrugators.size() == before.corrugators.size() + 1);
    REQUIRE(after.corrugators.back().code == "CO9");
}

TEST_CASE("a paper's price holds on every day, and no other paper's changes") {
    const auto before = fixture::small_plant();
    const auto after = with(before, {.prices = {{before.papers[0].code, 777}}});
    for (const auto day : {fixture::date(1990, 1, 1), fixture::date(2026, 10, 15)})
        REQUIRE(after.papers[0].price_on(day)->per_tonne == 777);
    const auto day = fixture::date(2026, 10, 15);
    REQUIRE(after.papers[1].price_on(day)->per_tonne == before.papers[1].price_on(day)->per_tonne);
}

TEST_CASE("a setting replaces the one of its name, and a new one is added") {
    const auto after = with(fixture::small_plant(), {.settings = {{"energy", {}, {setting("power_price", "0.19")}},
                                                                  {"run", {}, {setting("something", "1")}}}});
    REQUIRE(text_of(after, "energy", "power_price") == "0.19");
    REQUIRE(text_of(after, "energy", "fuel_price") == "0.06");
    REQUIRE(text_of(after, "run", "something") == "1");
}

TEST_CASE("a price of an unknown paper is refused by its name") {
    REQUIRE(refusal({.prices = {{"KL999", 500}}}) ==
            "papers.KL999: no such paper: found a price for it; name a paper of the plant");
}

TEST_CASE("a setting of a model that the plant does not list is refused by its name") {
    REQUIRE(refusal({.settings = {{"nosuch", {}, {setting("a", "1")}}}}) ==
            "plugins.nosuch: no such model: found a setting for it; name a model that the plant lists");
}
