// A scale of numbers for an axis: round steps that a reader can count.
#pragma once

#include <vector>

namespace flutebook::charts {

/// From the round number at or below the least value to the one at or above the greatest; never of no width.
class Scale {
public:
    /// `steps`: about how many there are. `low_at`, `high_at`: where its ends lie in the picture.
    Scale(double least, double greatest, int steps, double low_at, double high_at);

    [[nodiscard]] double at(double value) const {
        return low_at_ + (value - low_) / (high_ - low_) * (high_at_ - low_at_);
    }
    /// Each round number, both ends among them.
    [[nodiscard]] std::vector<double> ticks() const;
    /// Places that each of them needs.
    [[nodiscard]] int decimals() const;

private:
    double step_, low_, high_, low_at_, high_at_;
};

}  // namespace flutebook::charts
