// Exact money: a whole number of 1/10000 of the plant's currency.
//
// The same lines summed in any order give the same total. `Money::of` is the only place that rounds a product.
#pragma once

#include <cmath>
#include <optional>

#include "ledger/values/counted.hpp"

namespace flutebook {

class Money : public Counted<Money> {
public:
    /// Largest amount a single line may have, in the currency: |amount| < 9e10.
    static constexpr double limit = 9e10;
    /// Largest amount that is kept at all, in the currency.
    static constexpr double most = 9e14;

    constexpr Money() = default;
    static constexpr Money of_ten_thousandths(std::int64_t count) { return Money(count); }

    /// quantity x rate, rounded half away from zero to 1/10000. A hair is added before rounding, so that a tie in
    /// decimals falls where a person with a pencil puts it. Nothing where the amount is not below `limit`.
    [[nodiscard]] static std::optional<Money> of(double quantity, double rate) {
        if (!is_amount(quantity, rate)) return std::nullopt;
        return Money(static_cast<std::int64_t>(whole_ten_thousandths(quantity, rate)));
    }

    /// Whether of() has an answer. False where either is no number.
    [[nodiscard]] static bool is_amount(double quantity, double rate) { return std::fabs(quantity * rate) < limit; }
    /// The count of of(), where is_amount() holds, as a double: for loops over many amounts.
    [[nodiscard]] static double whole_ten_thousandths(double quantity, double rate) {
        return whole_half_away(quantity * rate * 10000 * hair);
    }

    /// An amount rounded half away from zero to `decimals` places of the currency (0 to 4), with the same hair.
    /// Nothing where it is not below `most`.
    [[nodiscard]] static std::optional<Money> rounded(double amount, int decimals) {
        if (!(std::fabs(amount) < most)) return std::nullopt;
        std::int64_t whole = 1;
        for (int i = 0; i < decimals; ++i) whole *= 10;
        return Money(rounded_half_away(amount * static_cast<double>(whole) * hair) * (10000 / whole));
    }

    [[nodiscard]] constexpr std::int64_t ten_thousandths() const { return count_; }
    /// In the currency's own unit: the nearest double.
    [[nodiscard]] double to_double() const { return static_cast<double>(count_) / 10000; }

private:
    friend Counted;
    using Counted::Counted;

    static constexpr double hair = 1 + 2e-15;
};

}  // namespace flutebook
