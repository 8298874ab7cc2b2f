// Units that the library reads otherwise than the person who wrote them meant. A wrong factor of a thousand, or of a
// tenth, is worse than a refusal that names what to write.
#include <algorithm>
#include <array>
#include <string>
#include <string_view>

#include "host/base/quoted_text.hpp"
#include "host/plant/unit_text.hpp"
#include "host/plant/units.hpp"

namespace flutebook::plant {

namespace {

template <std::size_t N>
bool is_one_of(std::string_view word, const std::array<std::string_view, N>& words) {
    return std::find(words.begin(), words.end(), word) != words.end();
}

// The word after a prefix of a thousand or a million; empty where there is none.
std::string_view after_prefix(std::string_view word) {
    for (const std::string_view prefix : {"kilo", "mega", "k", "M"})
        if (word.starts_with(prefix)) return word.substr(prefix.size());
    return {};
}

// kft2 is (1000 ft)2 to the library, a thousand times what the trade means by it.
bool is_thousand_of_an_area(const UnitWord& word) {
    constexpr std::array<std::string_view, 9> lengths{"ft",     "foot", "feet", "in",   "inch",
                                                      "inches", "yd",   "yard", "yards"};
    if (word.exponent.empty()) return false;
    // The library reads names in any case, symbols in theirs.
    return is_one_of(after_prefix(word.name), lengths) || is_one_of(after_prefix(in_lower_case(word.name)), lengths);
}

bool is_ton(const UnitWord& word) {
    constexpr std::array<std::string_view, 2> tons{"ton", "tons"};
    const auto name = in_lower_case(word.name);
    return is_one_of(name, tons) || is_one_of(after_prefix(name), tons) || is_one_of(after_prefix(word.name), tons);
}

}  // namespace

std::optional<std::string> why_unit_is_refused(const std::string& text) {
    if (has_shift(text))
        return "a unit that counts from another origin: found " + base::shown(text) + "; write a plain unit";
    if (has_number(text))
        return "a number inside a unit: found " + base::shown(text) +
               "; write a plain unit, such as `MSF` for 1000 ft2";
    for (const auto& word : words_of(text)) {
        if (is_thousand_of_an_area(word))
            return "an ambiguous unit: found " + base::shown(text) + ", which would be read as (" + word.name + ")" +
                   word.exponent + "; write `MSF` for 1000 ft2";
        if (is_ton(word))
            return "an ambiguous unit: found " + base::shown(text) +
                   "; write `t` for 1000 kg, `short_ton` for 2000 lb or `long_ton` for 2240 lb";
    }
    return std::nullopt;
}

}  // namespace flutebook::plant
