#include "ledger/money.hpp"

#include <cmath>

namespace flutebook {

std::optional<Money> Money::of(double quantity, double rate) {
    const double amount = quantity * rate;
    if (!(std::fabs(amount) < limit)) return std::nullopt;
    return Money(std::llround(amount * 10000 * (1 + 2e-15)));
}

}  // namespace flutebook
