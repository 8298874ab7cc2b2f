// Each rule is read by itself; an error in one does not stop the reading of the next.
#include "host/plant/pricing.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <variant>

#include "host/base/quoted_text.hpp"
#include "host/plant/plant_files.hpp"

namespace flutebook::plant {

namespace {

constexpr fields::QuantityRange coins_range{fields::range::above_0, 1e9, false, "a number above 0, at most 1000000000"};
constexpr fields::QuantityRange days{1, 3650, true, "a whole number of days from 1 to 3650"};
constexpr fields::QuantityRange quantity_key{0, fields::range::ordered.high, true, "a whole number up to 10000000"};
constexpr fields::QuantityRange share_key{fields::range::above_0, fields::range::below_1, false,
                                          "a share above 0 and below 1"};

// The number that a key is, where it is one and stands behind the key before it.
std::optional<double> number_key(const fields::Field& entry, const fields::QuantityRange& range,
                                 const std::optional<double>& before) {
    const auto read = fields::read_quantity({entry.key(), false, entry.key_place()}, "1", "");
    const auto* key = std::get_if<double>(&read);
    if (key == nullptr || !range.holds(*key)) {
        entry.complain_of_key(
            fmt::format("wrong key: found {}, expected {}", base::shown(entry.key()), range.expected));
        return std::nullopt;
    }
    if (before && *key <= *before) {
        entry.complain_of_key(fmt::format("out of order: found {} after {}, expected rising keys", *key, *before));
        return std::nullopt;
    }
    return *key;
}

std::vector<QuantityMargin> read_margins(const fields::Field& table) {
    std::vector<QuantityMargin> result;
    std::optional<double> before;
    for (const auto& entry : table.entries_at_least_one()) {
        const auto from = number_key(entry, quantity_key, before);
        if (from && !before && *from > 1)
            entry.complain_of_key(fmt::format("no margin for fewer: found {:.0f} as the first key, expected 0", *from));
        before = from ? from : before;
        result.push_back({from.value_or(0), entry.number("1", fields::range::share), entry.place()});
    }
    return result;
}

std::vector<CustomerMargin> read_customers(const fields::Field& table) {
    std::vector<CustomerMargin> result;
    for (const auto& entry : table.entries()) {
        fields::MapReader form(entry);
        const auto margin = form.field("margin");
        result.push_back({entry.key(), margin.number("1", fields::range::share), margin.place()});
        form.finish();
    }
    return result;
}

// An amount that an invoice can have.
PricingNumber read_coins(const fields::Field& field, const Plant& plant) {
    const PricingNumber result{field.number("money", coins_range), field.place()};
    const double coins = result.value * std::pow(10, plant.currency_minor_units);
    if (std::fabs(coins - std::round(coins)) > 1e-9 * coins)
        field.complain(fmt::format("not in coins of {}: found {}, expected at most {} decimals", plant.currency,
                                   result.value, plant.currency_minor_units));
    return result;
}

SecondCurrency read_second_currency(fields::MapReader form, const Plant& plant) {
    SecondCurrency result;
    const auto code = form.field("code");
    result.code = code.text();
    const auto digits = minor_units(result.code);
    if (!result.code.empty() && !digits)
        code.complain("unknown currency: found " + base::shown(result.code) +
                      ", expected a code of ISO 4217 such as `GBP`");
    if (digits && result.code == plant.currency)
        code.complain("the plant's own currency: found " + base::shown(result.code) + ", expected another one");
    result.minor_units = digits.value_or(0);
    const auto rate = form.field("rate");
    result.rate = rate.number("1", fields::range::positive);
    result.place = rate.place();
    form.finish();
    return result;
}

std::vector<ApprovalLimit> read_approvals(const fields::Field& table) {
    std::vector<ApprovalLimit> result;
    std::optional<double> before;
    for (const auto& entry : table.entries_at_least_one()) {
        const auto share = number_key(entry, share_key, before);
        before = share ? share : before;
        ApprovalLimit limit{share.value_or(0), {}, entry.key_place()};
        for (const auto& item : entry.items_at_least_one()) {
            auto name = item.text();
            if (!name.empty() && std::find(limit.names.begin(), limit.names.end(), name) != limit.names.end())
                item.complain("named twice: found " + base::shown(name) + ", expected each name once");
            limit.names.push_back(std::move(name));
        }
        result.push_back(std::move(limit));
    }
    return result;
}

}  // namespace

Tolerance read_tolerance(const fields::Field& map) {
    fields::MapReader form(map);
    Tolerance result;
    result.under = form.field("under").number("1", fields::range::share);
    result.over = form.field("over").number("1", fields::range::share);
    result.place = map.place();
    form.finish();
    return result;
}

Pricing read_pricing(fields::MapReader& form, const Plant& plant) {
    Pricing result;
    if (form.has("margin")) result.margins = read_margins(form.field("margin"));
    if (form.has("customers")) result.customers = read_customers(form.field("customers"));
    if (form.has("least_order")) result.least_order = read_coins(form.field("least_order"), plant);
    if (form.has("round_up_to")) result.round_up_to = read_coins(form.field("round_up_to"), plant);
    if (form.has("valid_days"))
        result.valid_days = {form.field("valid_days").number("1", days), form.field("valid_days").place()};
    if (form.has("tolerance")) result.tolerance = read_tolerance(form.field("tolerance"));
    if (form.has("second_currency")) result.second_currency = read_second_currency(form.form("second_currency"), plant);
    if (form.has("terms")) {
        fields::MapReader terms = form.form("terms");
        if (terms.has("delivery")) result.delivery_terms = terms.field("delivery").text();
        if (terms.has("payment")) result.payment_terms = terms.field("payment").text();
        terms.finish();
    }
    if (form.has("approve_below")) result.approve_below = read_approvals(form.field("approve_below"));
    return result;
}

const CustomerMargin* Pricing::find_customer(const std::string& customer) const {
    const auto found = std::find_if(customers.begin(), customers.end(),
                                    [&](const CustomerMargin& item) { return item.customer == customer; });
    return found == customers.end() ? nullptr : &*found;
}

const QuantityMargin* Pricing::find_margin(double quantity) const {
    const QuantityMargin* result = nullptr;
    for (const QuantityMargin& item : margins)
        if (item.from_quantity <= quantity) result = &item;
    return result;
}

bool Pricing::has_margin(const std::string& customer) const {
    return !margins.empty() || find_customer(customer) != nullptr;
}

const ApprovalLimit* Pricing::find_approval(double profit_share) const {
    const auto found = std::find_if(approve_below.begin(), approve_below.end(),
                                    [&](const ApprovalLimit& limit) { return profit_share < limit.profit_share; });
    return found == approve_below.end() ? nullptr : &*found;
}

}  // namespace flutebook::plant
