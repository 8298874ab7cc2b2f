// Exact money: a whole number of 1/10000 of the plant's currency.
//
// The same lines summed in any order give the same total. `Money::of` is the only place that rounds a product.
#pragma once

#include <compare>
#include <cstdint>
#include <optional>

namespace flutebook {

class Money {
public:
    /// Largest amount a single line may have, in the currency: |amount| < 9e10.
    static constexpr double limit = 9e10;

    constexpr Money() = default;
    static constexpr Money of_ten_thousandths(std::int64_t count) { return Money(count); }

    /// quantity x rate, rounded half away from zero to 1/10000. A hair is added before rounding, so that a tie in
    /// decimals falls where a person with a pencil puts it. Nothing where the amount is not below `limit`.
    [[nodiscard]] static std::optional<Money> of(double quantity, double rate);

    /// An amount rounded half away from zero to `decimals` places of the currency (0 to 4), with the same hair.
    /// Nothing where it is not below `most`.
    [[nodiscard]] static std::optional<Money> rounded(double amount, int decimals);
    /// Largest amount that is kept at all, in the currency.
    static constexpr double most = 9e14;

    [[nodiscard]] constexpr std::int64_t ten_thousandths() const { return count_; }
    /// In the currency's own unit: the nearest double.
    [[nodiscard]] double to_double() const { return static_cast<double>(count_) / 10000; }

    constexpr Money& operator+=(Money other) {
        count_ += other.count_;
        return *this;
    }
    friend constexpr Money operator+(Money left, Money right) { return left += right; }
    friend constexpr Money operator-(Money left, Money right) { return Money(left.count_ - right.count_); }
    friend constexpr Money operator-(Money only) { return Money(-only.count_); }
    friend constexpr auto operator<=>(Money, Money) = default;

private:
    explicit constexpr Money(std::int64_t count) : count_(count) {}

    std::int64_t count_ = 0;
};

}  // namespace flutebook
