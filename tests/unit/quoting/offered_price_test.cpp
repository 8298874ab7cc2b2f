// From a cost to the price that is offered, each figure reckoned by hand.
#include "host/quoting/offered_price.hpp"

#include <catch2/catch.hpp>

#include "host/answers/quote_answer.hpp"

using namespace flutebook;
using answers::PriceRule;
using Kind = PriceRule::Kind;
using quoting::OfferedPrice;

namespace {

Money coins(double amount) {
    return Money::rounded(amount, 4).value();
}

// A plant of euros with margins by quantity and one for a customer.
plant::Plant ruled_plant() {
    plant::Plant result{};
    result.currency = "EUR";
    result.currency_minor_units = 2;
    result.pricing.margins = {{0, 0.24, {"plant.yaml", 1, 1}}, {1000, 0.20, {"plant.yaml", 1, 2}}};
    result.pricing.customers = {{"Ashlar Tiles", 0.15, {"plant.yaml", 2, 1}}};
    return result;
}

OfferedPrice offered(const plant::Plant& plant, const orders::Request& request, double quantity, double cost) {
    return quoting::offered_price(plant, request, quantity, cost).value();
}

std::vector<Kind> kinds_of(const OfferedPrice& price) {
    std::vector<Kind> result;
    for (const PriceRule& rule : price.making.rules) result.push_back(rule.kind);
    return result;
}

Money order_value(const OfferedPrice& price, double quantity) {
    return answers::order_profit(price.per_thousand, Money{}, quantity, 2)->order_value;
}

}  // namespace

TEST_CASE("the margin is the request's, else the customer's, else the quantity's, and the price says which") {
    const plant::Plant plant = ruled_plant();
    orders::Request request{};
    CHECK(offered(plant, request, 999, 480).per_thousand == coins(631.58));  // 480 / 0.76 = 631.5789...
    CHECK(offered(plant, request, 1000, 480).per_thousand == coins(600));    // 480 / 0.80
    CHECK(kinds_of(offered(plant, request, 1000, 480)) == std::vector{Kind::quantity_margin});
    CHECK(offered(plant, request, 1000, 480).making.rules[0].at == "plant.yaml:1:2");
    request.customer = "Ashlar Tiles";
    CHECK(offered(plant, request, 1000, 480).per_thousand == coins(564.71));  // 480 / 0.85 = 564.7058...
    CHECK(kinds_of(offered(plant, request, 1000, 480)) == std::vector{Kind::customer_margin});
    request.margin = 0.5;
    CHECK(offered(plant, request, 1000, 480).per_thousand == coins(960));
    CHECK(kinds_of(offered(plant, request, 1000, 480)) == std::vector{Kind::request_margin});
}

TEST_CASE("a price is rounded up to its multiple, and one that is a multiple stays and names no rule") {
    plant::Plant plant = ruled_plant();
    plant.pricing.round_up_to = plant::PricingNumber{0.05, {"plant.yaml", 3, 1}};
    const OfferedPrice up = offered(plant, {}, 999, 480);
    CHECK(up.per_thousand == coins(631.60));
    CHECK(kinds_of(up) == std::vector{Kind::quantity_margin, Kind::round_up});
    CHECK(up.making.rules[0].price_per_thousand == coins(631.58));
    CHECK(kinds_of(offered(plant, {}, 1000, 480)) == std::vector{Kind::quantity_margin});
}

TEST_CASE("a smaller order is raised to the least order value, in the price alone") {
    plant::Plant plant = ruled_plant();
    plant.pricing.least_order = plant::PricingNumber{250, {"plant.yaml", 4, 1}};
    // 300 at 631.58 are 189.47; 250 over 300 boxes are 833.3333 a thousand, in coins 833.34.
    const OfferedPrice raised = offered(plant, {}, 300, 480);
    CHECK(raised.per_thousand == coins(833.34));
    CHECK(order_value(raised, 300) == coins(250));
    CHECK(kinds_of(raised) == std::vector{Kind::quantity_margin, Kind::least_order});
    // 7000 at 10 are 70; 250 over 7000 boxes are 35.7142... a thousand, in coins 35.72.
    const OfferedPrice large = offered(plant, {}, 7000, 8);
    CHECK(large.per_thousand == coins(35.72));
    CHECK(order_value(large, 7000) == coins(250.04));
    // 500 at 500 are 250 to the coin.
    CHECK(kinds_of(offered(plant, {}, 500, 380)) == std::vector{Kind::quantity_margin});
}

TEST_CASE("a currency without coins raises to its own unit") {
    plant::Plant plant = ruled_plant();
    plant.currency_minor_units = 0;
    plant.pricing.least_order = plant::PricingNumber{1000, {}};
    CHECK(offered(plant, {}, 300, 480).per_thousand == coins(3334));  // 1000 over 300 boxes: 3333.33
}

TEST_CASE("the second currency follows the rounded price, in its own coins") {
    plant::Plant plant = ruled_plant();
    plant.pricing.round_up_to = plant::PricingNumber{0.05, {}};
    plant.pricing.second_currency = plant::SecondCurrency{"GBP", 2, 0.86, {}};
    const OfferedPrice price = offered(plant, {}, 999, 480);
    REQUIRE(price.making.second.has_value());
    CHECK(price.making.second->price_per_thousand == coins(543.18));  // 631.60 x 0.86 = 543.176
    CHECK(price.making.second->order_value == coins(542.64));         // 0.999 x 543.18 = 542.6368
    plant.pricing.second_currency = plant::SecondCurrency{"JPY", 0, 161.5, {}};
    CHECK(offered(plant, {}, 999, 480).making.second->price_per_thousand == coins(102003));  // 102003.4
}

TEST_CASE("an offer ends so many days after the request's day, and its own tolerance counts before the plant's") {
    plant::Plant plant = ruled_plant();
    plant.pricing.valid_days = plant::PricingNumber{30, {}};
    plant.pricing.tolerance = plant::Tolerance{0.05, 0.1, {"plant.yaml", 5, 1}};
    orders::Request request{};
    request.date = *base::parse_date("2026-10-15");
    CHECK(base::to_string(*quoting::offer_terms(plant, request).valid_until) == "2026-11-14");
    CHECK(quoting::offer_terms(plant, request).tolerance->over == 0.1);
    request.tolerance = plant::Tolerance{0, 0.2, {"r.yaml", 9, 1}};
    CHECK(quoting::offer_terms(plant, request).tolerance->over == 0.2);
    CHECK(quoting::offer_terms(plant, request).tolerance_at == "r.yaml:9:1");
}

TEST_CASE("a price that is too large to be kept is none, in either currency") {
    plant::Plant plant = ruled_plant();
    CHECK_FALSE(quoting::offered_price(plant, {}, 1, 1e15).has_value());
    plant.pricing.second_currency = plant::SecondCurrency{"GBP", 2, 1e14, {}};
    CHECK_FALSE(quoting::offered_price(plant, {}, 1000, 480).has_value());
}
