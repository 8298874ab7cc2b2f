// The sections of a month's page, top to bottom. Each is text of its own: a heading, then lines that fit the page.
#pragma once

#include <string>

#include "host/services/closing/month.hpp"

namespace flutebook::reports {

/// Both sides of the mass balance, to the gram.
[[nodiscard]] std::string balance_section(const services::MonthAnswer& answer);
/// What each machine and the floor held, took in, passed on and lost.
[[nodiscard]] std::string centres_section(const services::MonthAnswer& answer);
/// Each cause: actual, expected, excess, and what it cost.
[[nodiscard]] std::string losses_section(const services::MonthAnswer& answer, const std::string& currency);
/// Both sides of the money.
[[nodiscard]] std::string month_cost_section(const services::MonthAnswer& answer, const std::string& currency);
/// From the press to the mill's payment.
[[nodiscard]] std::string scrap_section(const services::MonthAnswer& answer, const std::string& currency);
/// The months before, for the trend.
[[nodiscard]] std::string trend_section(const services::MonthAnswer& answer, const std::string& currency);
/// By machine, shift, board or order; nothing where it was not asked for.
[[nodiscard]] std::string parts_section(const services::MonthAnswer& answer);

/// "1 234.500".
[[nodiscard]] std::string kg_text(Grams mass);
/// "3.25 %"; "-" where there is no whole.
[[nodiscard]] std::string share_text(Grams part, Grams whole);

}  // namespace flutebook::reports
