// Days as people write them in files and on the command line: YYYY-MM-DD.
#pragma once

#include <chrono>
#include <optional>
#include <string>
#include <string_view>

namespace flutebook::base {

using Date = std::chrono::year_month_day;

/// Nothing unless the text is exactly YYYY-MM-DD and the calendar has that day.
[[nodiscard]] std::optional<Date> parse_date(std::string_view text);

/// YYYY-MM-DD.
[[nodiscard]] std::string to_string(Date date);

/// The day of an instant, in UTC: YYYY-MM-DD.
[[nodiscard]] std::string utc_day(std::chrono::sys_seconds when);
/// The instant in UTC: YYYY-MM-DD HH:MM:SS.
[[nodiscard]] std::string utc_time(std::chrono::sys_seconds when);

}  // namespace flutebook::base
