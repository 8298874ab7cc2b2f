// The same month as process costing tells it: what is lost in the normal course is borne by good product, less what it
// sells for; what is lost beyond that costs as much as good product.
//
// It stands beside the cost after ISO 14051, which gives every loss its own cost, and says what the excess alone was
// worth: what the plant would have had more, had it lost no more than was expected.
#pragma once

#include "host/month/account.hpp"

namespace flutebook::month {

struct ProcessCost {
    Grams normal;         // expected by the allowances
    Grams abnormal;       // lost or unexplained beyond it; below zero a gain
    double normal_value;  // what the normal loss sells for
    double cost_per_kg;   // of product, in the currency
    double product_value;
    double abnormal_value;     // below zero a gain
    double abnormal_proceeds;  // what the abnormal loss sells for
};

/// `scrap_price` in the currency for a kg. Nothing where no product was to be expected.
[[nodiscard]] std::optional<ProcessCost> process_cost(const MonthAccount& account, double scrap_price);

/// What mills paid for a kg this month; 0 where nothing was paid for.
[[nodiscard]] double scrap_price(const MonthAccount& account);

}  // namespace flutebook::month
