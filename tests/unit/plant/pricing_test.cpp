// `pricing:` of plant.yaml: what it may say, and every way in which it says it wrongly.
#include <catch2/catch.hpp>

#include "host/base/errors.hpp"
#include "host/orders/margin.hpp"
#include "tests/unit/plant/plant_folder.hpp"

using namespace flutebook;
using namespace flutebook::fixture;

namespace {

// plant.yaml ends with these rules: their first line is its ninth.
Lines complaints_of(const std::string& rules) {
    const std::string mill = "  Northweir: {moisture: 0.10, deduction: dry-matter}\n";
    return complaints_after("plant.yaml", mill, mill + "pricing:\n  " + rules + "\n");
}

plant::Pricing read(const std::string& rules) {
    const PlantFolder folder;
    const std::string mill = "  Northweir: {moisture: 0.10, deduction: dry-matter}\n";
    folder.change("plant.yaml", mill, mill + "pricing:\n" + rules);
    return folder.read().pricing;
}

}  // namespace

TEST_CASE("every rule of a price is read as it is written, money in the plant's own currency too") {
    const plant::Pricing rules = read(
        "  margin: {0: 0.24, 1000: 0.20}\n  customers: {Ashlar Tiles: {margin: 0.15}}\n  least_order: 250 EUR\n"
        "  round_up_to: 0.05\n  valid_days: 30\n  tolerance: {under: 0.05, over: 0.1}\n"
        "  second_currency: {code: GBP, rate: 0.86}\n  approve_below: {0.05: [B. Example], 0.10: [A. Example]}\n");
    REQUIRE(rules.find_margin(999) != nullptr);
    CHECK(rules.find_margin(999)->margin == 0.24);
    CHECK(rules.find_margin(1000)->margin == 0.20);
    REQUIRE(rules.find_customer("Ashlar Tiles") != nullptr);
    CHECK(rules.find_customer("Ashlar Tiles")->margin == 0.15);
    CHECK(rules.find_customer("Ashlar") == nullptr);
    CHECK(rules.least_order->value == 250);
    CHECK(rules.round_up_to->value == 0.05);
    CHECK(rules.valid_days->value == 30);
    CHECK(rules.tolerance->under == 0.05);
    CHECK(rules.tolerance->over == 0.1);
    CHECK(rules.second_currency->minor_units == 2);
    CHECK(rules.second_currency->rate == 0.86);
}

TEST_CASE("a request's own margin goes before its customer's, and that before the quantity's") {
    plant::Plant plant;
    plant.pricing = read("  margin: {0: 0.24, 1000: 0.20}\n  customers: {Ashlar Tiles: {margin: 0.15}}\n");
    orders::Request request{};
    CHECK(orders::margin_of(plant, request, 1000).share == 0.20);
    request.customer = "Ashlar Tiles";
    CHECK(orders::margin_of(plant, request, 1000).share == 0.15);
    request.margin = 0.18;
    CHECK(orders::margin_of(plant, request, 1000).share == 0.18);
}

TEST_CASE("trim is paid alone, or as the ledger shares it, and no other word is taken") {
    const auto trim = [](const std::string& word) {
        const PlantFolder folder;
        const std::string mill = "  Northweir: {moisture: 0.10, deduction: dry-matter}\n";
        folder.change("plant.yaml", mill, mill + "trim: " + word + "\n");
        return folder.read().trim->way;
    };
    CHECK(trim("alone") == plant::AskedTrim::Way::alone);
    CHECK(trim("share") == plant::AskedTrim::Way::by_ledger);
    CHECK_THROWS_AS(trim("shared"), InputError);
}

TEST_CASE("the lowest limit that a profit is below says who may approve, and the limit itself is enough") {
    const plant::Pricing rules = read("  approve_below: {0.05: [B. Example], 0.10: [A. Example]}\n");
    CHECK(rules.find_approval(0.04)->names == std::vector<std::string>{"B. Example"});
    CHECK(rules.find_approval(0.05)->names == std::vector<std::string>{"A. Example"});
    CHECK(rules.find_approval(0.10) == nullptr);
}

TEST_CASE("margins by quantity begin at none, rise, and are shares below 1") {
    CHECK(complaints_of("margin: {500: 0.2}") ==
          Lines{"plant.yaml:9:12: pricing.margin.500: no margin for fewer: found 500 as the first key, expected 0"});
    CHECK(complaints_of("margin: {0: 0.2, 1000: 0.1, 1000.0: 0.1}") ==
          Lines{"plant.yaml:9:31: pricing.margin.1000.0: out of order: found 1000 after 1000, expected rising keys"});
    CHECK(complaints_of("margin: {0: 1}") ==
          Lines{"plant.yaml:9:15: pricing.margin.0: out of range: found 1, expected a share from 0 to below 1"});
    CHECK(complaints_of("margin: {many: 0.1}") ==
          Lines{"plant.yaml:9:12: pricing.margin.many: wrong key: found `many`, expected a whole number up to "
                "10000000"});
    CHECK(complaints_of("margin: {}") ==
          Lines{"plant.yaml:9:11: pricing.margin: an empty map: expected at least one entry"});
}

TEST_CASE("what is wrong with the other rules is told together, each at its place") {
    CHECK(
        complaints_of("customers: {Ashlar Tiles: {margni: 0.1}}\n"
                      "  least_order: 250.005\n"
                      "  round_up_to: 0\n"
                      "  valid_days: 0.5\n"
                      "  tolerance: {under: 0.05}\n"
                      "  second_currency: {code: EUR, rate: 0}\n"
                      "  approve_below: {1.5: [A. Example], 0.1: []}\n"
                      "  lest_order: 3") ==
        Lines{"plant.yaml:9:15: pricing.customers.Ashlar Tiles.margin: missing: expected a share from 0 to below 1",
              "plant.yaml:9:30: pricing.customers.Ashlar Tiles.margni: unknown key; did you mean `margin`",
              "plant.yaml:10:16: pricing.least_order: not in coins of EUR: found 250.005, expected at most 2 decimals",
              "plant.yaml:11:16: pricing.round_up_to: out of range: found 0, expected a number above 0, at most "
              "1000000000 in `money`",
              "plant.yaml:12:15: pricing.valid_days: out of range: found 0.5, expected a whole number of days from "
              "1 to 3650",
              "plant.yaml:13:3: pricing.tolerance.over: missing: expected a share from 0 to below 1",
              "plant.yaml:14:27: pricing.second_currency.code: the plant's own currency: found `EUR`, expected "
              "another one",
              "plant.yaml:14:38: pricing.second_currency.rate: out of range: found 0, expected a number above 0",
              "plant.yaml:15:19: pricing.approve_below.1.5: wrong key: found `1.5`, expected a share above 0 and "
              "below 1",
              "plant.yaml:15:43: pricing.approve_below.0.1: an empty list: expected at least one entry",
              "plant.yaml:16:3: pricing.lest_order: unknown key; did you mean `least_order`"});
}

TEST_CASE("a request has a margin of its own where the plant has none for it") {
    const PlantFolder folder;
    folder.change("r.yaml", "margin: 0.18\n", "");
    CHECK(folder.request_complaints() == Lines{"r.yaml:1:1: margin: missing: expected a share from 0 to below 1"});
    const std::string mill = "  Northweir: {moisture: 0.10, deduction: dry-matter}\n";
    folder.change("plant.yaml", mill, mill + "pricing: {customers: {Ashlar Tiles: {margin: 0.15}}}\n");
    CHECK_FALSE(folder.read_request().margin.has_value());
    folder.change("r.yaml", "Ashlar Tiles", "Somebody");
    CHECK(folder.request_complaints() == Lines{"r.yaml:1:1: margin: missing: expected a share from 0 to below 1"});
}

TEST_CASE("a request's own tolerance is two shares") {
    CHECK(request_complaints_after("margin: 0.18\n", "margin: 0.18\ntolerance: {under: 0.1, over: 1}\n") ==
          Lines{"r.yaml:9:31: tolerance.over: out of range: found 1, expected a share from 0 to below 1"});
}
