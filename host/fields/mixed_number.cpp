#include "host/fields/mixed_number.hpp"

#include <cstddef>

#include "host/base/characters.hpp"

namespace flutebook::fields {

namespace {

// A whole number of at most six digits at the front of a text, which it leaves; no digit stands before it in vain.
std::optional<int> take_whole(std::string_view& text) {
    constexpr std::size_t most_digits = 6;
    std::size_t length = 0;
    int value = 0;
    while (length < text.size() && base::is_digit(text[length]) && length <= most_digits)
        value = value * 10 + (text[length++] - '0');
    if (length == 0 || length > most_digits || (length > 1 && text[0] == '0')) return std::nullopt;
    text.remove_prefix(length);
    return value;
}

bool take(std::string_view& text, char sign) {
    if (text.empty() || text.front() != sign) return false;
    text.remove_prefix(1);
    return true;
}

bool is_ruler_part(int below) {
    for (const int part : {2, 4, 8, 16, 32, 64})
        if (below == part) return true;
    return false;
}

}  // namespace

std::optional<MixedNumber> read_mixed_number(std::string_view text) {
    std::optional<int> whole = 0;
    std::optional<int> above = take_whole(text);
    if (above && take(text, ' ')) {
        whole = above;
        above = take_whole(text);
    }
    if (!above || !take(text, '/')) return std::nullopt;
    const std::optional<int> below = take_whole(text);
    if (!below || !is_ruler_part(*below) || *above == 0 || *above >= *below) return std::nullopt;
    if (!text.empty() && !take(text, ' ')) return std::nullopt;
    return MixedNumber{*whole + static_cast<double>(*above) / *below, text};
}

}  // namespace flutebook::fields
