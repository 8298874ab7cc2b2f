#include "ledger/values/money.hpp"

#include <cmath>

namespace flutebook {

std::optional<Money> Money::of(double quantity, double rate) {
    const double amount = quantity * rate;
    if (!(std::fabs(amount) < limit)) return std::nullopt;
    return Money(std::llround(amount * 10000 * (1 + 2e-15)));
}

std::optional<Money> Money::rounded(double amount, int decimals) {
    if (!(std::fabs(amount) < most)) return std::nullopt;
    std::int64_t whole = 1;
    for (int i = 0; i < decimals; ++i) whole *= 10;
    const std::int64_t step = 10000 / whole;
    return Money(std::llround(amount * static_cast<double>(whole) * (1 + 2e-15)) * step);
}

}  // namespace flutebook
