#include "host/charts/scale.hpp"

#include <algorithm>
#include <cmath>

namespace flutebook::charts {

namespace {

// 1, 2 or 5 times a power of ten.
double round_step(double about) {
    const double power = std::pow(10, std::floor(std::log10(about)));
    for (const double factor : {1.0, 2.0, 5.0})
        if (about <= factor * power * (1 + 1e-9)) return factor * power;
    return 10 * power;
}

}  // namespace

Scale::Scale(double least, double greatest, int steps, double low_at, double high_at)
    : step_(round_step(std::max(greatest - least, 1e-9) / steps)), low_at_(low_at), high_at_(high_at) {
    low_ = std::floor(least / step_ + 1e-9) * step_;
    high_ = std::ceil(greatest / step_ - 1e-9) * step_;
    if (high_ <= low_) high_ = low_ + step_;
}

std::vector<double> Scale::ticks() const {
    std::vector<double> result;
    const auto count = static_cast<int>(std::round((high_ - low_) / step_));
    for (int i = 0; i <= count; ++i) result.push_back(low_ + i * step_);
    return result;
}

int Scale::decimals() const {
    return std::max(0, static_cast<int>(-std::floor(std::log10(step_) + 1e-9)));
}

}  // namespace flutebook::charts
