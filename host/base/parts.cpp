#include "host/base/parts.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numeric>

namespace flutebook::base {

std::int64_t in_units(double value, int decimals) {
    return std::llround(value * std::pow(10.0, decimals));
}

double from_units(std::int64_t units, int decimals) {
    return static_cast<double>(units) / std::pow(10.0, decimals);
}

std::vector<std::int64_t> parts_of(std::int64_t whole, const std::vector<double>& parts, int decimals) {
    std::vector<std::int64_t> result;
    std::vector<double> dropped;
    for (const double part : parts) {
        const double exact = part * std::pow(10.0, decimals);
        result.push_back(static_cast<std::int64_t>(std::floor(exact)));
        dropped.push_back(exact - std::floor(exact));
    }
    std::int64_t left = whole - std::accumulate(result.begin(), result.end(), std::int64_t{0});
    std::vector<std::size_t> order(parts.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return dropped[a] > dropped[b]; });
    // More than one round only where the parts are far from the whole.
    while (left > 0 && !order.empty())
        for (auto at = order.begin(); at != order.end() && left > 0; ++at, --left) ++result[*at];
    while (left < 0 && std::any_of(result.begin(), result.end(), [](std::int64_t part) { return part > 0; }))
        for (auto at = order.rbegin(); at != order.rend() && left < 0; ++at)
            if (result[*at] > 0) {
                --result[*at];
                ++left;
            }
    return result;
}

}  // namespace flutebook::base
