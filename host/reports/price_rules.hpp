// Which rules made the prices, in words, and what stands beside them by the plant's rules: the second currency, the
// last day, what quantities are taken, who approved.
#pragma once

#include <string>
#include <vector>

#include "host/answers/quote_answer.hpp"
#include "host/reports/building.hpp"
#include "host/reports/sheet_context.hpp"

namespace flutebook::reports {

/// Whether more than the request's own margin made the price.
[[nodiscard]] bool has_plant_rule(const answers::PriceMaking& making);

/// "margin 20 % by quantity (plant.yaml:9:13); raised to the least order of 250.00 (plant.yaml:11:16)".
[[nodiscard]] std::string rules_text(const SheetContext& context, const answers::PriceMaking& making);

/// A line for each group of quantities that the same rules made, and who approved; none where the request's own margin
/// alone made the prices.
[[nodiscard]] std::vector<std::string> price_rule_lines(const SheetContext& context,
                                                        const answers::RequestAnswer& answer);
[[nodiscard]] ReportSection price_rules_section(const std::vector<std::string>& lines);

/// Prices and order values in the second currency; untitled where there is none.
[[nodiscard]] ReportSection second_currency_section(const SheetContext& context, const answers::RequestAnswer& answer);

/// The facts of an offer, for the heading.
[[nodiscard]] Facts offer_facts(const answers::RequestAnswer& answer);

}  // namespace flutebook::reports
