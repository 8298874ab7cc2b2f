#include "host/month/account.hpp"

#include <cmath>

namespace flutebook::month {

Grams MonthAccount::opening_stock() const {
    Grams sum = floor.open;
    for (const auto& centre : centres) sum += centre.open;
    return sum;
}

Grams MonthAccount::closing_stock() const {
    Grams sum = floor.close;
    for (const auto& centre : centres) sum += centre.close;
    return sum;
}

Grams MonthAccount::lost() const {
    Grams sum;
    for (const auto& cause : causes) sum += cause.actual;
    return sum;
}

Grams MonthAccount::expected() const {
    Grams sum;
    for (const auto& cause : causes) sum += cause.expected;
    return sum;
}

Grams MonthAccount::unexplained() const {
    Grams sum = -floor.counted;
    for (const auto& centre : centres) sum += centre.unexplained();
    return sum;
}

Money MonthAccount::waste_cost() const {
    Money sum;
    for (const auto& cause : causes) sum += cause.cost;
    return sum;
}

std::optional<double> MonthAccount::recycling_rate() const {
    return share_of(sent, loose_scrap.in);
}

std::optional<double> share_of(Grams part, Grams whole) {
    if (whole <= Grams()) return std::nullopt;
    return static_cast<double>(part.count()) / static_cast<double>(whole.count());
}

bool balances_within(const MonthAccount& account, double tolerance) {
    const auto share = share_of(account.unexplained(), account.issued);
    return share ? std::abs(*share) <= tolerance : account.unexplained() == Grams();
}

}  // namespace flutebook::month
