// Texts that a careless or a hostile person might write: a good text with a few things changed. All that is drawn comes
// from a seed, so a case can be made again.
#pragma once

#include <cstddef>
#include <cstdint>
#include <random>
#include <string>
#include <vector>

namespace flutebook::fuzz {

class Draws {
public:
    Draws(std::uint64_t seed, std::uint64_t number) : engine_(seed * 0x9E3779B97F4A7C15U + number) {}

    /// From 0 to below `count`, which is not 0.
    [[nodiscard]] std::size_t below(std::size_t count) { return static_cast<std::size_t>(engine_() % count); }
    [[nodiscard]] bool one_in(std::size_t count) { return below(count) == 0; }

    template <typename T>
    [[nodiscard]] const T& of(const std::vector<T>& items) {
        return items[below(items.size())];
    }

private:
    std::mt19937_64 engine_;
};

/// `text` with one to four changes: numbers that are extreme, wrong or of another size; words, lines and bytes that
/// are swapped, doubled, lost or put in.
[[nodiscard]] std::string mutated(std::string text, Draws& draws);

}  // namespace flutebook::fuzz
