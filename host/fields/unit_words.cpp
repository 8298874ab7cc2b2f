#include "host/fields/unit_words.hpp"

#include <algorithm>
#include <array>

#include "host/fields/unit_text.hpp"

namespace flutebook::fields {

namespace {

// What ISO 4217 calls a dollar, where board is sold by the thousand square feet or the sign is usual.
bool is_dollar(std::string_view currency) {
    constexpr std::array<std::string_view, 4> dollars{"USD", "CAD", "AUD", "NZD"};
    return std::find(dollars.begin(), dollars.end(), currency) != dollars.end();
}

std::string with_dollar_as_money(std::string_view written) {
    std::string result;
    for (const char sign : written) {
        if (sign == '$')
            result += "money";
        else
            result += sign;
    }
    return result;
}

}  // namespace

std::string library_unit(std::string_view written, const UnitWords& words) {
    std::string result = is_dollar(words.currency) ? with_dollar_as_money(written) : std::string(written);
    result = with_word_replaced(result, words.currency, "money");
    if (words.ton == UnitWords::Ton::ambiguous) return result;
    return with_word_replaced(with_word_replaced(result, "ton", "short_ton"), "tons", "short_ton");
}

}  // namespace flutebook::fields
