// Mass as the ledger keeps it: whole grams of a type of their own, so that no kilogram is taken for a gram.
#pragma once

#include <compare>
#include <cstdint>

namespace flutebook {

class Grams {
public:
    constexpr Grams() = default;
    static constexpr Grams of(std::int64_t count) { return Grams(count); }

    [[nodiscard]] constexpr std::int64_t count() const { return count_; }
    [[nodiscard]] constexpr double to_kg() const { return static_cast<double>(count_) / 1000; }

    constexpr Grams& operator+=(Grams other) {
        count_ += other.count_;
        return *this;
    }
    friend constexpr Grams operator+(Grams left, Grams right) { return left += right; }
    friend constexpr Grams operator-(Grams left, Grams right) { return Grams(left.count_ - right.count_); }
    friend constexpr Grams operator-(Grams only) { return Grams(-only.count_); }
    friend constexpr auto operator<=>(Grams, Grams) = default;

private:
    explicit constexpr Grams(std::int64_t count) : count_(count) {}

    std::int64_t count_ = 0;
};

}  // namespace flutebook
