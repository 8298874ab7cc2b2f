// Plants and orders generated from a seed, to try models with: plausible ones, and among them the extremes of what is
// valid (no run waste or half of the sheets, no roll loss, no trim, one sheet or ten million).
//
// Most orders can be made; about one in five fits no machine. The same seed gives the same plant and order on every
// machine and with every standard library: the standard prescribes the numbers of its random engines, but not those of
// its distributions, so the distributions are written here.
#pragma once

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <random>
#include <vector>

#include "host/orders/request.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::plugin_check {

/// Random numbers that depend on the seed only. One thread at a time.
class Draws {
public:
    explicit Draws(std::uint64_t seed) : bits_(seed) {}

    /// A seed for another object.
    [[nodiscard]] std::uint64_t seed() { return bits_(); }

    /// Below `count`. The bias of the remainder is too small to matter.
    [[nodiscard]] std::size_t index(std::size_t count) { return static_cast<std::size_t>(bits_() % count); }

    [[nodiscard]] bool one_in(std::size_t count) { return index(count) == 0; }

    /// At least `low`, below `high`.
    [[nodiscard]] double between(double low, double high) {
        return low + (high - low) * (static_cast<double>(bits_() >> 11U) * 0x1p-53);
    }

    /// A whole number, both ends included.
    [[nodiscard]] double whole(double low, double high) {
        return low + static_cast<double>(index(static_cast<std::size_t>(high - low) + 1));
    }

    /// A length as people write it: mostly whole mm, sometimes with a decimal, sometimes in sixteenths of an inch.
    [[nodiscard]] double length_mm(double low, double high) {
        const double length = between(low, high);
        switch (index(8)) {
            case 0:
                return std::floor(length * 10) / 10;
            case 1:
                return std::ceil(length / 25.4 * 16) / 16 * 25.4;
            default:
                return std::ceil(length);
        }
    }

    template <typename Value>
    [[nodiscard]] const Value& pick(const std::vector<Value>& values) {
        return values[index(values.size())];
    }

private:
    std::mt19937_64 bits_;
};

struct GeneratedOrder {
    plant::Plant plant;
    orders::Request request;
};

/// 1 to 3 corrugators, up to 5 converters of every kind, boards of single face, single and double wall; one request
/// in any style, with a route (1 to 3 machines) or without, 1 to 4 quantities. The plant lists no models.
[[nodiscard]] GeneratedOrder make_order(std::uint64_t seed);

}  // namespace flutebook::plugin_check
