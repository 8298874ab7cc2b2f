// Edit distance with swaps, over bytes, by rows. Words are cut off at a length that no code or key of a plant has, so
// that a hostile file cannot make the suggestion cost more than the reading.
#include "host/base/near_spellings.hpp"

#include <algorithm>
#include <array>
#include <cstddef>

#include "host/base/quoted_text.hpp"

namespace flutebook::base {

namespace {

constexpr std::size_t longest_word = 64;
constexpr std::size_t few = 12;

char lower(char letter) {
    return letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter - 'A' + 'a') : letter;
}

bool same(char left, char right) {
    return lower(left) == lower(right);
}

// Both words at most `longest_word` bytes.
std::size_t distance(std::string_view from, std::string_view to) {
    using SpellingRow = std::array<std::size_t, longest_word + 1>;
    SpellingRow before_last{}, last{}, now{};
    for (std::size_t j = 0; j <= to.size(); ++j) last[j] = j;
    for (std::size_t i = 1; i <= from.size(); ++i) {
        now[0] = i;
        for (std::size_t j = 1; j <= to.size(); ++j) {
            const std::size_t changed = last[j - 1] + (same(from[i - 1], to[j - 1]) ? 0 : 1);
            now[j] = std::min({last[j] + 1, now[j - 1] + 1, changed});
            if (i > 1 && j > 1 && same(from[i - 1], to[j - 2]) && same(from[i - 2], to[j - 1]))
                now[j] = std::min(now[j], before_last[j - 2] + 1);
        }
        before_last = last;
        last = now;
    }
    return last[to.size()];
}

}  // namespace

std::optional<std::string> nearest(std::string_view word, const std::vector<std::string>& candidates) {
    if (word.empty() || word.size() > longest_word) return std::nullopt;
    const std::string* best = nullptr;
    std::size_t best_distance = std::max<std::size_t>(1, (word.size() + 1) / 3) + 1;
    for (const auto& candidate : candidates) {
        if (candidate.size() > longest_word) continue;
        const auto found = distance(word, candidate);
        // A word of one or two letters has nothing left of it after one edit, but for its case.
        if (found >= best_distance || found >= std::min(word.size(), candidate.size())) continue;
        best = &candidate;
        best_distance = found;
    }
    return best == nullptr ? std::nullopt : std::optional(*best);
}

std::string did_you_mean(std::string_view word, const std::vector<std::string>& candidates) {
    if (const auto near = nearest(word, candidates)) return "; did you mean " + shown(*near);
    return candidates.size() > few ? "" : one_of(candidates);
}

std::string one_of(const std::vector<std::string>& codes) {
    constexpr std::size_t most = 40;
    if (codes.empty()) return "";
    std::string list;
    for (std::size_t i = 0; i < std::min(most, codes.size()); ++i) list += (i > 0 ? ", " : "") + shown(codes[i]);
    if (codes.size() > most) list += " and " + std::to_string(codes.size() - most) + " more";
    return "; expected one of " + list;
}

}  // namespace flutebook::base
