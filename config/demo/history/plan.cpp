#include "config/demo/history/plan.hpp"

#include <fmt/format.h>

namespace flutebook::demo {

namespace {

using std::chrono::days;
using std::chrono::months;
using std::chrono::year_month;

// A customer's habit: so many, every so many months.
struct Habit {
    const char* request;
    double quantity;
    int every, first;  // months; counted from 0
};

constexpr Habit habits[] = {
    {"R-1001", 5000, 1, 0},  {"R-1002", 200000, 2, 0}, {"R-1002", 50000, 2, 1}, {"R-1003", 150, 3, 1},
    {"R-1004", 60000, 2, 1}, {"R-1004", 15000, 2, 0},  {"R-1005", 3000, 1, 0},  {"R-1006", 16000, 2, 0},
    {"R-1006", 4000, 2, 1},  {"R-1007", 20000, 2, 0},  {"R-1007", 5000, 4, 1},  {"R-1008", 10000, 2, 1},
    {"R-1010", 9000, 1, 0},  {"R-1011", 8000, 2, 0},   {"R-1011", 2000, 2, 1},  {"R-1012", 12000, 3, 0},
    {"R-1013", 6000, 2, 1},  {"R-1001", 1000, 4, 2},
};

// New quotes were made when half of the time was over.
constexpr int months_of_first_quotes = 6;

}  // namespace

year_month month_of(Day day) {
    const std::chrono::year_month_day date(day);
    return date.year() / date.month();
}

Day first_day_of(year_month month) {
    return Day(month / 1);
}

Day last_day() {
    return first_day_of(first_month + months(month_count)) - days(1);
}

bool is_working_day(Day day) {
    return std::chrono::weekday(day).iso_encoding() <= 5;
}

Day working_day(Day day, int on) {
    while (!is_working_day(day)) day += days(1);
    for (; on > 0; --on) {
        day += days(1);
        while (!is_working_day(day)) day += days(1);
    }
    return day;
}

std::vector<PlannedOrder> plan_orders() {
    std::vector<PlannedOrder> orders;
    for (int i = 0; i < month_count; ++i) {
        const auto month = first_month + months(i);
        std::vector<const Habit*> due;
        for (const auto& habit : habits)
            if (i >= habit.first && (i - habit.first) % habit.every == 0) due.push_back(&habit);
        // Spread over the month's working days: what starts last is still on the floor when the month ends.
        const auto count = static_cast<int>(due.size());
        for (int j = 0; j < count; ++j) {
            const auto& habit = *due[static_cast<std::size_t>(j)];
            orders.push_back({fmt::format("{:02}{:02}-{:02}", static_cast<int>(month.year()) % 100,
                                          static_cast<unsigned>(month.month()), j + 1),
                              habit.request, i < months_of_first_quotes ? 0 : 1, habit.quantity,
                              working_day(first_day_of(month), j * 22 / count)});
        }
    }
    return orders;
}

}  // namespace flutebook::demo
