// The plant's own rules between cost and price: `pricing:` of plant.yaml, each rule optional.
//
// Plain values, as written: money here is in the plant's currency, and code that calculates a price converts it to
// coins.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "host/base/place.hpp"

namespace flutebook::plant {

/// `margin: {0: 0.24, 1000: 0.20}`: from this quantity on.
struct QuantityMargin {
    double from_quantity;
    double margin;  // a share of the price
    base::Place place;
};

/// `customers: {NAME: {margin: 0.15}}`.
struct CustomerMargin {
    std::string customer;
    double margin;
    base::Place place;
};

/// One number of the rules, with its place.
struct PricingNumber {
    double value;
    base::Place place;
};

/// How many fewer or more boxes than ordered the customer takes: shares of the quantity.
struct Tolerance {
    double under = 0, over = 0;
    base::Place place = {};
};

/// Prices are shown in this currency beside the plant's own.
struct SecondCurrency {
    std::string code;  // ISO 4217
    int minor_units = 0;
    double rate = 0;  // of it for one of the plant's
    base::Place place = {};
};

/// `approve_below: {0.10: [NAME]}`: a quote whose profit is a smaller share of its order value is kept only with the
/// name of one of these.
struct ApprovalLimit {
    double profit_share;
    std::vector<std::string> names;
    base::Place place;
};

struct Pricing {
    std::vector<QuantityMargin> margins;  // rising, the first for every quantity; or none
    std::vector<CustomerMargin> customers;
    std::optional<PricingNumber> least_order;  // no order brings less; a whole number of coins
    std::optional<PricingNumber> round_up_to;  // prices per thousand are whole multiples; a whole number of coins
    std::optional<PricingNumber> valid_days;
    std::optional<Tolerance> tolerance;
    std::optional<SecondCurrency> second_currency;
    std::vector<ApprovalLimit> approve_below;   // rising
    std::string delivery_terms, payment_terms;  // on an offer, in the plant's own words; empty: not said

    /// Null where the plant has no margin of its own for this customer.
    [[nodiscard]] const CustomerMargin* find_customer(const std::string& customer) const;
    /// Null where the plant has no margins by quantity.
    [[nodiscard]] const QuantityMargin* find_margin(double quantity) const;
    /// Whether an order of this customer has a margin, at any quantity, where its request gives none.
    [[nodiscard]] bool has_margin(const std::string& customer) const;
    /// The lowest limit that this share of profit is below; null where it is below none.
    [[nodiscard]] const ApprovalLimit* find_approval(double profit_share) const;
};

}  // namespace flutebook::plant
