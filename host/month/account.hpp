// A month's account: where every gram and all money went.
//
// issued + adhesive + opening stock of machines and floor = product + losses + unexplained + closing stock, to the
// gram; money in + opening cost = product cost + waste cost of all causes + cost of what is unexplained, idle and
// corrected + closing cost, to the ten-thousandth.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "ledger/reading/month.hpp"

namespace flutebook::month {

/// A cause of loss in the whole plant.
struct CauseAccount {
    std::string cause;
    Grams actual;
    Grams expected;  // unavoidable by the allowances, for what was really made
    Money cost;      // after ISO 14051
    Money cash;      // of it paper, adhesive and energy: what would not have been spent, had nothing been lost

    [[nodiscard]] Grams excess() const { return actual - expected; }
};

/// A corrugator or converter.
struct CentreAccount {
    std::string centre;
    Grams open, in;
    Grams passed, lost;  // good sheets, blanks and boxes; scrap
    Grams close;
    bool is_counted = false;  // on the last day; else it stands empty

    [[nodiscard]] Grams out() const { return passed + lost; }
    [[nodiscard]] Grams unexplained() const { return open + in - out() - close; }
};

/// Sheets and blanks between machines: open + made - fed + returned - lost + counted = close.
struct FloorAccount {
    Grams open, made, fed, returned;
    Grams lost;     // weighed scrap
    Grams counted;  // what counts found more than the books said
    Grams close;
    Money open_cost, close_cost;
};

/// Scrap, in scale mass from the press on: open + in - out + counted = close.
struct ScrapAccount {
    Grams open, in, out, counted, close;
};

struct MonthAccount {
    ledger::Month month;
    Grams issued, adhesive;
    Grams product;                       // what reached finished goods, less what came back as scrap
    std::vector<CauseAccount> causes;    // by the order of their bytes
    std::vector<CentreAccount> centres;  // likewise
    FloorAccount floor;
    ScrapAccount loose_scrap, bale_yard;
    Grams sent, paid;
    Money revenue;
    Money money_in, opening_cost;  // paper, adhesive and the centres' cost; stock of machines and floor
    Money product_cost, closing_cost;
    Money unexplained_cost;  // of the unexplained mass
    Money idle_cost;         // of centres that ran nothing, or that found no loss
    Money corrections_cost;  // that rows of earlier months had borne, before they were reversed
    Money scrap_handling;    // of it the baler's energy and all waste management: what less scrap would have saved
    /// What the next month begins with: inner accounts, none that is empty.
    std::vector<ledger::Balance> closing;

    [[nodiscard]] Grams opening_stock() const;  // of machines and floor
    [[nodiscard]] Grams closing_stock() const;
    [[nodiscard]] Grams lost() const;
    [[nodiscard]] Grams expected() const;
    [[nodiscard]] Grams unexplained() const;  // net, of machines and floor
    [[nodiscard]] Money waste_cost() const;   // of all causes
    /// Beside it: unexplained, idle, corrections.
    [[nodiscard]] Money cost_beside() const { return unexplained_cost + idle_cost + corrections_cost; }
    /// Scrap sent over scrap made; nothing where none was made.
    [[nodiscard]] std::optional<double> recycling_rate() const;
};

/// A share of `whole`; nothing where there is none.
[[nodiscard]] std::optional<double> share_of(Grams part, Grams whole);

/// Whether no more is unexplained than this share of the issued paper.
[[nodiscard]] bool balances_within(const MonthAccount& account, double tolerance);

}  // namespace flutebook::month
