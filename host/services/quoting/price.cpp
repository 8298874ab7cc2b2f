#include "host/services/quoting/price.hpp"

namespace flutebook::services {

std::optional<Money> price(double cost, double margin, int minor_units) {
    return Money::rounded(cost / (1 - margin), minor_units);
}

}  // namespace flutebook::services
