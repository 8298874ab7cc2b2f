// What a month's losses, its product and its stocks cost, after ISO 14051.
//
// Materials are traced one by one at a corrugator and as one, board, behind it; energy and system cost follow mass;
// waste-management cost goes to the losses alone. Numbers here are unrounded, in the currency; masses as posted.
//
// A rate of energy, system or waste-management cost for a kilogram is the month's cost over the kilograms of its own
// rows. Reversals of earlier months' rows are given back at that rate: so a correction never carries a month's cost.
#pragma once

#include <map>
#include <string>
#include <utility>

#include "host/month/flows_by_account.hpp"

namespace flutebook::month {

/// Cost in two parts: what would not have been spent on less mass (paper, adhesive, energy), and system cost, which
/// would.
struct CarriedCost {
    double cash = 0, system = 0;

    [[nodiscard]] double all() const { return cash + system; }
    CarriedCost& operator+=(const CarriedCost& other) {
        cash += other.cash;
        system += other.system;
        return *this;
    }
    friend CarriedCost operator+(CarriedCost left, const CarriedCost& right) { return left += right; }
    friend CarriedCost operator*(double times, const CarriedCost& one) {
        return {times * one.cash, times * one.system};
    }
};

struct CauseCost {
    CarriedCost carried;
    double handling = 0;  // waste management
};

struct CostSplit {
    CarriedCost product;
    std::map<std::string, CauseCost> waste;  // by cause
    CarriedCost unexplained;
    double idle = 0;         // of a centre without a row of its own; found no intake or no loss
    double corrections = 0;  // not borne, because rows of earlier months were reversed
    std::map<std::pair<std::string, std::string>, CarriedCost> closing;  // machine or floor, and material
};

/// The whole plant. `floor_closing_kg` is what stands on the floor at the month's end.
[[nodiscard]] CostSplit split_cost(const FlowsByAccount& workings, const std::map<std::string, double>& paper_prices,
                                   double floor_closing_kg);

}  // namespace flutebook::month
