// What the demo's history leaves to chance. The engine is the standard's own, whose numbers are prescribed; the
// distributions are not, so they are written here: the same history on every machine.
#pragma once

#include <cstddef>
#include <cstdint>
#include <random>
#include <vector>

namespace flutebook::demo {

/// A source of random numbers, a function of its seed alone. One thread at a time.
class Draws {
public:
    explicit Draws(std::uint64_t seed) : bits_(seed) {}

    /// At least `low`, below `high`.
    [[nodiscard]] double between(double low, double high) {
        return low + (high - low) * (static_cast<double>(bits_() >> 11U) * 0x1p-53);
    }

    /// A whole number, both ends included.
    [[nodiscard]] double whole(double low, double high) {
        return low + static_cast<double>(index(static_cast<std::size_t>(high - low) + 1));
    }

    [[nodiscard]] bool one_in(std::size_t count) { return index(count) == 0; }

    template <typename Value>
    [[nodiscard]] const Value& pick(const std::vector<Value>& values) {
        return values[index(values.size())];
    }

    /// Below `count`; the bias of the remainder is far below what a reader could see.
    [[nodiscard]] std::size_t index(std::size_t count) { return static_cast<std::size_t>(bits_() % count); }

private:
    std::mt19937_64 bits_;
};

}  // namespace flutebook::demo
