// Strict dates: eight digits and two hyphens, and a day that the calendar has.
#include "host/base/date.hpp"

#include <fmt/format.h>

#include <cstddef>

namespace flutebook::base {

std::optional<Date> parse_date(std::string_view text) {
    constexpr std::string_view form = "dddd-dd-dd";
    if (text.size() != form.size()) return std::nullopt;
    for (std::size_t i = 0; i < form.size(); ++i)
        if (form[i] == 'd' ? text[i] < '0' || text[i] > '9' : text[i] != form[i]) return std::nullopt;
    const auto number = [&](std::size_t start, std::size_t length) {
        int value = 0;
        for (const char digit : text.substr(start, length)) value = value * 10 + (digit - '0');
        return value;
    };
    const Date date{std::chrono::year(number(0, 4)), std::chrono::month(static_cast<unsigned>(number(5, 2))),
                    std::chrono::day(static_cast<unsigned>(number(8, 2)))};
    return date.ok() ? std::optional(date) : std::nullopt;
}

std::string to_string(Date date) {
    return fmt::format("{:04}-{:02}-{:02}", static_cast<int>(date.year()), static_cast<unsigned>(date.month()),
                       static_cast<unsigned>(date.day()));
}

std::string utc_day(std::chrono::sys_seconds when) {
    return to_string(Date(std::chrono::floor<std::chrono::days>(when)));
}

std::string utc_time(std::chrono::sys_seconds when) {
    const std::chrono::hh_mm_ss time(when - std::chrono::floor<std::chrono::days>(when));
    return fmt::format("{} {:02}:{:02}:{:02}", utc_day(when), time.hours().count(), time.minutes().count(),
                       time.seconds().count());
}

}  // namespace flutebook::base
