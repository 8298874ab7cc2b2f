#include "host/quoting/offered_price.hpp"

#include <chrono>
#include <cmath>
#include <cstdint>

#include "host/orders/margin.hpp"
#include "host/quoting/cost_sheet.hpp"

namespace flutebook::quoting {

namespace {

using answers::PriceRule;
using RuleKind = PriceRule::Kind;

RuleKind rule_kind(orders::OrderMargin::From from) {
    switch (from) {
        case orders::OrderMargin::From::request:
            return RuleKind::request_margin;
        case orders::OrderMargin::From::customer:
            return RuleKind::customer_margin;
        case orders::OrderMargin::From::quantity:
            return RuleKind::quantity_margin;
    }
    return RuleKind::request_margin;
}

// The least multiple that is not below a count, neither of them below zero.
std::int64_t multiple_from(std::int64_t count, std::int64_t of) {
    return (count + of - 1) / of * of;
}

// Of an amount that is a whole number of coins.
std::int64_t ten_thousandths(double amount) {
    return std::llround(amount * 10000);
}

std::int64_t coin_of(int minor_units) {
    std::int64_t result = 10000;
    for (int i = 0; i < minor_units; ++i) result /= 10;
    return result;
}

// Keeps the rule where it changed the price.
void raise(OfferedPrice& price, RuleKind kind, const plant::PricingNumber& rule, std::int64_t raised) {
    if (raised <= price.per_thousand.ten_thousandths()) return;
    price.per_thousand = Money::of_ten_thousandths(raised);
    price.making.rules.push_back({kind, rule.value, base::place_text(rule.place), price.per_thousand});
}

// False where an amount is too large to be kept.
bool add_second(OfferedPrice& price, const plant::SecondCurrency& currency, double quantity) {
    const auto thousand = Money::rounded(price.per_thousand.to_double() * currency.rate, currency.minor_units);
    if (!thousand) return false;
    const auto value = Money::rounded(thousand->to_double() * quantity / 1000, currency.minor_units);
    if (!value) return false;
    price.making.second = answers::SecondPrice{currency.code, currency.minor_units, currency.rate, *thousand, *value};
    return true;
}

}  // namespace

std::optional<OfferedPrice> offered_price(const plant::Plant& plant, const orders::Request& request, double quantity,
                                          double cost) {
    const plant::Pricing& rules = plant.pricing;
    const orders::OrderMargin margin = orders::margin_of(plant, request, quantity);
    const auto by_margin = price(cost, margin.share, plant.currency_minor_units);
    if (!by_margin) return std::nullopt;
    OfferedPrice result{*by_margin, {}};
    result.making.rules.push_back(
        {rule_kind(margin.from), margin.share, base::place_text(margin.place), result.per_thousand});
    if (*by_margin < Money{}) return result;
    if (rules.round_up_to)
        raise(result, RuleKind::round_up, *rules.round_up_to,
              multiple_from(result.per_thousand.ten_thousandths(), ten_thousandths(rules.round_up_to->value)));
    const auto value = Money::rounded(result.per_thousand.to_double() * quantity / 1000, plant.currency_minor_units);
    if (!value) return std::nullopt;
    if (rules.least_order && value->ten_thousandths() < ten_thousandths(rules.least_order->value)) {
        const auto boxes = static_cast<std::int64_t>(quantity);
        const std::int64_t thousand = (ten_thousandths(rules.least_order->value) * 1000 + boxes - 1) / boxes;
        raise(result, RuleKind::least_order, *rules.least_order,
              multiple_from(thousand, coin_of(plant.currency_minor_units)));
    }
    if (rules.second_currency && !add_second(result, *rules.second_currency, quantity)) return std::nullopt;
    return result;
}

answers::OfferTerms offer_terms(const plant::Plant& plant, const orders::Request& request) {
    answers::OfferTerms result;
    if (const auto& days = plant.pricing.valid_days)
        result.valid_until =
            base::Date(std::chrono::sys_days(request.date) + std::chrono::days(static_cast<int>(days->value)));
    result.tolerance = request.tolerance ? request.tolerance : plant.pricing.tolerance;
    if (result.tolerance) result.tolerance_at = base::place_text(result.tolerance->place);
    return result;
}

}  // namespace flutebook::quoting
