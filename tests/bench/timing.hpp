// How the benches here measure: the median of runs that take turns.
#pragma once

#include <algorithm>
#include <chrono>
#include <vector>

namespace flutebook::bench {

inline constexpr int runs = 5;

[[nodiscard]] double wall_seconds(const auto& work) {
    const auto start = std::chrono::steady_clock::now();
    work();
    return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
}

[[nodiscard]] inline double median(std::vector<double> values) {
    const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
    std::nth_element(values.begin(), middle, values.end());
    return *middle;
}

}  // namespace flutebook::bench
