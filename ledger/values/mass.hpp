// Mass as the ledger keeps it: whole grams of a type of their own, so that no kilogram is taken for a gram.
#pragma once

#include "ledger/values/counted.hpp"

namespace flutebook {

class Grams : public Counted<Grams> {
public:
    constexpr Grams() = default;
    static constexpr Grams of(std::int64_t count) { return Grams(count); }

    [[nodiscard]] constexpr std::int64_t count() const { return count_; }
    [[nodiscard]] constexpr double to_kg() const { return static_cast<double>(count_) / 1000; }

private:
    friend Counted;
    using Counted::Counted;
};

}  // namespace flutebook
