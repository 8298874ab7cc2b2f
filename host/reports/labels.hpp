// Labels that stand on more than one page: each is written once, so that a figure has one name everywhere.
#pragma once

#include <string>

namespace flutebook::reports {

inline constexpr const char* made_on_label = "made on";
inline constexpr const char* cannot_be_made_label = "cannot be made";
inline constexpr const char* order_value_label = "order value";
inline constexpr const char* profit_label = "profit";
inline constexpr const char* of_total_label = "of total";
inline constexpr const char* prices_of_label = "papers at prices of";
inline constexpr const char* money_in_label = "money in";
inline constexpr const char* paper_issued_label = "paper issued";
inline constexpr const char* board_bought_label = "board bought";
inline constexpr const char* arrived_unfit_label = "Arrived unfit";
inline constexpr const char* prices_of_bought_label = "board at prices of";
inline constexpr const char* dry_adhesive_label = "adhesive, dry";
inline constexpr const char* net_cost_label = "cost, net of recovery";
inline constexpr const char* cost_per_thousand_label = "cost per thousand";
inline constexpr const char* price_per_thousand_label = "price per thousand";
inline constexpr const char* dearer_by_label = "dearer by";
inline constexpr const char* before_label = "before";
inline constexpr const char* after_label = "after";
inline constexpr const char* difference_label = "difference";
inline constexpr const char* contribution_label = "price less per-unit cost";
inline constexpr const char* cash_margin_label = "price less per-unit and per-run cost";

/// Where the losses that an order was quoted with are not those of the formulas of a run.
[[nodiscard]] inline std::string quoted_otherwise_text(const std::string& models) {
    return "losses are expected by the formulas of the run, but were quoted by " + models +
           ": the difference between the two is part of excess and usage";
}

}  // namespace flutebook::reports
