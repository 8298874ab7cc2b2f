// The month's flows added to the accounts they touch: what every machine received, passed on and kept.
//
// The one place that knows which ways documents move mass and money.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "host/month/books.hpp"

namespace flutebook::month {

struct Stock {
    Grams mass;
    Money money;

    Stock& operator+=(const Stock& other) {
        mass += other.mass;
        money += other.money;
        return *this;
    }
};

/// What left a machine: good where it has no cause. At a corrugator by material.
struct Outflow {
    std::string to, material, cause;
    Grams mass;
};

/// What reversals of earlier months' rows took back, among a month's flows: masses below zero.
struct TakenBack {
    Grams in;                           // paper, adhesive, board fed
    std::map<std::string, Grams> lost;  // by cause
};

/// A corrugator keeps its materials apart; at a converter all is board.
struct MachineFlows {
    std::string code;
    std::map<std::string, Stock> open;
    Money open_system;                    // the part of the opening stock's cost that is system cost, beside `open`
    std::map<std::string, Stock> bought;  // paper and adhesive from their stores
    Grams fed;                            // from the floor
    std::vector<Outflow> out;
    std::map<std::string, Grams> close;  // as counted on the last day
    Money energy, system, waste_management;
    bool has_own_row = false;  // an issue or a run of this month that stands
    TakenBack taken_back;

    [[nodiscard]] bool is_corrugator() const;
    [[nodiscard]] Stock opened() const;
    [[nodiscard]] Stock all_bought() const;
    [[nodiscard]] Grams passed() const;
    [[nodiscard]] Grams lost() const;
    [[nodiscard]] Grams closed() const;
    /// Everything that went out, explained or not.
    [[nodiscard]] Grams gone() const { return opened().mass + all_bought().mass + fed - closed(); }
};

struct FlowsByAccount {
    std::map<std::string, MachineFlows> machines;
    Stock floor_open;
    Money floor_open_system;                  // beside `floor_open`
    Grams floor_counted;                      // what counts found more than the books said
    std::map<std::string, Grams> floor_lost;  // by cause
    std::map<std::string, Grams> returned;    // taken off the product, by cause
    Grams loose_scrap_open, loose_scrap_counted, baled;
    Grams bale_yard_open, bale_yard_counted;
    Money baler_energy, baler_system, baler_waste_management;
    std::map<std::string, Grams> lost_taken_back;  // of floor and finished goods
    Grams sent, paid;
    Money revenue;
    Money bought, centre_costs;
    Grams issued, adhesive;
};

/// Throws LedgerError, unfit, where something moved in a way that no document moves it.
[[nodiscard]] FlowsByAccount flows_by_account(const MonthBooks& books);

}  // namespace flutebook::month
