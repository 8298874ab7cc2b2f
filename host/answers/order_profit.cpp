// The profit of an order and its busiest machine, calculated in one place, also for old quotes that do not store them.
#include <map>

#include "host/answers/quote_answer.hpp"

namespace flutebook::answers {

std::optional<OrderProfit> order_profit(Money price_per_thousand, Money cost, double quantity, int minor_units) {
    const auto value = Money::rounded(price_per_thousand.to_double() * quantity / 1000, minor_units);
    if (!value) return std::nullopt;
    const Money profit = *value - cost;
    return OrderProfit{*value, profit, *value == Money() ? 0 : profit.to_double() / value->to_double()};
}

std::optional<BusiestMachine> busiest_machine(const std::vector<const Quote*>& pieces) {
    std::map<std::string, double> hours;
    for (const Quote* quote : pieces)
        for (std::size_t step = 0; step < quote->machine_hours.size(); ++step)
            hours[step == 0 ? quote->corrugator : quote->route[step - 1]] += quote->machine_hours[step];
    std::optional<BusiestMachine> result;
    for (const auto& [machine, busy] : hours)
        if (busy > (result ? result->hours : 0)) result = {machine, busy};
    return result;
}

}  // namespace flutebook::answers
