// What loss beyond the expected was worth in cash: what would have been saved, had it not been lost.
//
// A kilogram less lost saves the paper, adhesive and energy in it; crews and machines cost the same. It does without
// what a kilogram of scrap brings, net of its handling. The full cost after ISO 14051 stands with the actual loss.
#pragma once

#include <string>
#include <vector>

#include "host/month/account.hpp"

namespace flutebook::month {

/// What a kilogram of scrap brought net of its handling, in the currency.
struct ScrapValue {
    enum class Of { month, twelve_months, nothing };  // nothing: none was sold
    double per_kg = 0;
    Of of = Of::nothing;
};

/// Of the month, where it sold scrap, else of `year`: the twelve months that end with it.
[[nodiscard]] ScrapValue scrap_value(const MonthAccount& account, const std::vector<MonthAccount>& year);

/// The excess of a cause, below zero where less was lost than expected. A cause that lost nothing is valued at the cash
/// in a kilogram of all losses.
[[nodiscard]] Money excess_value(const MonthAccount& account, const CauseAccount& cause, const ScrapValue& scrap);
/// The same of a part of a cause's excess, of a machine, a shift or an order: at what the whole month's is worth a
/// kilogram.
[[nodiscard]] Money excess_value(const MonthAccount& account, const std::string& cause, Grams excess,
                                 const ScrapValue& scrap);
/// Of all causes.
[[nodiscard]] Money excess_value(const MonthAccount& account, const ScrapValue& scrap);

}  // namespace flutebook::month
