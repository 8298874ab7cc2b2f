// Which orders the demo plant makes in its fourteen months, and from which quote each was taken.
#pragma once

#include <chrono>
#include <string>
#include <vector>

namespace flutebook::demo {

using Day = std::chrono::sys_days;

inline constexpr std::chrono::year_month first_month{std::chrono::year(2025), std::chrono::October};
inline constexpr int month_count = 14;

/// The day after which nothing is recorded.
[[nodiscard]] Day last_day();
[[nodiscard]] std::chrono::year_month month_of(Day day);
[[nodiscard]] Day first_day_of(std::chrono::year_month month);
/// Monday to Friday.
[[nodiscard]] bool is_working_day(Day day);
/// The same day, or the first working day after it, `days` working days on.
[[nodiscard]] Day working_day(Day day, int days);

struct PlannedOrder {
    std::string number;   // the plant's own: 2510-03
    std::string request;  // R-1001
    int quotes;           // from which of the two rounds of quotes
    double quantity;
    Day start;  // on the corrugator
};

/// In order of their start.
[[nodiscard]] std::vector<PlannedOrder> plan_orders();

}  // namespace flutebook::demo
