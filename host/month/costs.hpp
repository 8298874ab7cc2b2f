// What a month's losses, its product and its stocks cost, after ISO 14051.
//
// Materials are traced one by one at a corrugator and as one, board, behind it; energy and system cost follow mass;
// waste-management cost goes to the losses alone. Numbers here are unrounded, in the currency; masses as posted.
//
// The same month as process costing tells it: what is lost in the normal course is borne by good product, less what it
// sells for; what is lost beyond that costs as much as good product.
//
// It stands beside the cost after ISO 14051, which gives every loss its own cost, and says what the excess alone was
// worth: what the plant would have had more, had it lost no more than was expected.
#pragma once

#include <map>
#include <string>
#include <utility>

#include "host/month/account.hpp"
#include "host/month/flows_by_account.hpp"

namespace flutebook::month {

struct CostSplit {
    double product = 0;
    std::map<std::string, double> waste;  // by cause
    double unexplained = 0;
    double idle = 0;                                                // found no intake or no loss
    std::map<std::pair<std::string, std::string>, double> closing;  // machine or floor, and material

    [[nodiscard]] double all() const;
};

/// A rate that a pool of cost has for each kg. Where the pool has no mass, or one of the other sign, there is none and
/// the cost is idle.
struct Rate {
    double per_kg = 0;
    double idle = 0;
};
[[nodiscard]] Rate rate_of(double money, double kg);

/// What the good sheets of the corrugators are worth, and how many they are.
struct Sheets {
    double money = 0;
    double kg = 0;
};

/// Splits one corrugator's cost; answers with what it put on the floor. Finished sheets are in `split.product`.
[[nodiscard]] Sheets split_corrugator(const MachineFlows& machine, const std::map<std::string, double>& paper_prices,
                                      CostSplit& split);

/// Splits what the floor held and was given, over the converters and back, at one average for the month. `closing_kg`
/// is what stands on the floor at its end.
void split_floor(const FlowsByAccount& workings, const Sheets& result, double closing_kg, CostSplit& split);

/// Waste-management cost over losses by kg.
void charge_losses(double money, const std::map<std::string, Grams>& lost, CostSplit& split);

/// The whole plant.
[[nodiscard]] CostSplit split_cost(const FlowsByAccount& workings, const std::map<std::string, double>& paper_prices,
                                   double floor_closing_kg);

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
