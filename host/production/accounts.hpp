// The names of the ledger's accounts, and how documents move mass and money between them.
//
// Inner accounts are counted: one per corrugator and converter under the machine's code, the floor, the loose scrap and
// the bale yard. Borders are of any sign and never counted.
//
// kind             from -> to                          material                   cause    mass, money
// paper            paper-store -> corrugator           the paper                           issued, at its price
// corrugator-run   adhesive-store -> corrugator        adhesive                            dry, at the order's rate
//                  corrugator -> floor or finished     each paper, adhesive                good sheets
//                  corrugator -> loose-scrap           each paper, adhesive       board's  its share of the loss
// converter-run    floor -> converter                  board                               fed
//                  converter -> floor or finished      board                               good sheets, blanks, boxes
//                  converter -> loose-scrap            board                      its own  lost
// weighed-scrap    centre -> loose-scrap               paper at a corrugator,     its own  weighed
//                                                      else board
// bale             loose-scrap -> bale-yard            the grade                           weighed
// ticket           bale-yard -> mill:NAME              the grade                           sent
//                  mill:NAME -> revenue                the grade                           paid for, and what was paid
// centre-cost      costs -> centre                     the class                           none, the amount
// count            opening -> account                  the paper at a corrugator,          where it opens the account
//                                                      board, scrap
#pragma once

#include <string>
#include <string_view>

namespace flutebook::production::account {

inline constexpr const char* floor = "floor";
inline constexpr const char* loose_scrap = "loose-scrap";
inline constexpr const char* bale_yard = "bale-yard";

inline constexpr const char* paper_store = "paper-store";
inline constexpr const char* adhesive_store = "adhesive-store";
inline constexpr const char* finished = "finished";
inline constexpr const char* opening = "opening";
inline constexpr const char* costs = "costs";
inline constexpr const char* revenue = "revenue";
inline constexpr const char* unexplained = "unexplained";

/// "mill:Northweir".
inline constexpr const char* mill_prefix = "mill:";
[[nodiscard]] inline std::string of_mill(const std::string& name) {
    return mill_prefix + name;
}

}  // namespace flutebook::production::account

namespace flutebook::production {

/// What an account stands for. Machines have their codes as names.
enum class AccountKind {
    machine,
    floor,
    loose_scrap,
    bale_yard,
    paper_store,
    adhesive_store,
    finished,
    opening,
    costs,
    revenue,
    unexplained,
    mill
};

/// The kind of an account that the ledger names. A plant's machines may not have the other accounts' names, so what is
/// none of them is a machine.
[[nodiscard]] AccountKind account_kind(std::string_view name);

/// Of any sign and never counted: stores, finished goods, mills, and what has no mass. Every other account is inner.
[[nodiscard]] bool is_border(AccountKind kind);

}  // namespace flutebook::production

namespace flutebook::production::material {

inline constexpr const char* adhesive = "adhesive";
inline constexpr const char* board = "board";         // combined: sheets, blanks, boxes
inline constexpr const char* paper = "paper";         // at a corrugator, of no known grade
inline constexpr const char* scrap = "scrap";         // of no known grade
inline constexpr const char* system_cost = "system";  // no mass: a centre's cost, and its part in the cost of a stock

}  // namespace flutebook::production::material
