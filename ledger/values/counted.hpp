// A quantity that is a whole number of its smallest unit, so that sums are exact in any order. Each quantity is a type
// of its own: grams are not added to money.
#pragma once

#include <compare>
#include <cstdint>

namespace flutebook {

/// The arithmetic of `Quantity`, which inherits from this: `class Grams : public Counted<Grams>`.
template <typename Quantity>
class Counted {
public:
    constexpr Quantity& operator+=(Quantity other) {
        count_ += other.count_;
        return static_cast<Quantity&>(*this);
    }
    friend constexpr Quantity operator+(Quantity left, Quantity right) { return left += right; }
    friend constexpr Quantity operator-(Quantity left, Quantity right) { return Quantity(left.count_ - right.count_); }
    friend constexpr Quantity operator-(Quantity only) { return Quantity(-only.count_); }
    friend constexpr auto operator<=>(Counted, Counted) = default;

protected:
    constexpr Counted() = default;
    explicit constexpr Counted(std::int64_t count) : count_(count) {}

    std::int64_t count_ = 0;
};

}  // namespace flutebook
