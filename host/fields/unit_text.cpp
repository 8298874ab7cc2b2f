// One scan over a unit's text serves all questions: it is cut into words with their exponents and the signs between.
//
// An exponent is a whole number that follows a word, at once or after `^` or `**`, perhaps with a minus sign. Raised
// digits and the raised dot are put into ASCII first, so that `kft²` is not another word than `kft2`.
//
// Units that the library reads otherwise than the person who wrote them meant. A wrong factor of a thousand, or of a
// tenth, is worse than a refusal that names what to write.
#include "host/fields/unit_text.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdlib>
#include <string>
#include <string_view>

#include "host/base/characters.hpp"
#include "host/base/quoted_text.hpp"
#include "host/fields/units.hpp"

namespace flutebook::fields {

namespace {

struct Sign {
    std::string_view raised, plain;
};
constexpr std::array<Sign, 12> signs{{{"\u00B7", "*"},
                                      {"\u207B", "-"},
                                      {"\u2070", "0"},
                                      {"\u00B9", "1"},
                                      {"\u00B2", "2"},
                                      {"\u00B3", "3"},
                                      {"\u2074", "4"},
                                      {"\u2075", "5"},
                                      {"\u2076", "6"},
                                      {"\u2077", "7"},
                                      {"\u2078", "8"},
                                      {"\u2079", "9"}}};

std::string in_plain_signs(std::string_view unit) {
    std::string result;
    while (!unit.empty()) {
        const auto* found =
            std::find_if(signs.begin(), signs.end(), [&](const Sign& sign) { return unit.starts_with(sign.raised); });
        const auto length = found == signs.end() ? 1 : found->raised.size();
        result += found == signs.end() ? unit.substr(0, 1) : found->plain;
        unit.remove_prefix(length);
    }
    return result;
}

bool is_word(char sign) {
    return (sign >= 'a' && sign <= 'z') || (sign >= 'A' && sign <= 'Z') || sign == '_' ||
           static_cast<unsigned char>(sign) >= 0x80;
}

std::size_t end_of(std::string_view text, std::size_t at, bool (*belongs)(char)) {
    while (at < text.size() && belongs(text[at])) ++at;
    return at;
}

// A word with its exponent, or one sign that is neither.
struct Piece {
    std::string_view word, exponent;
    std::string_view whole;
};

Piece piece_at(std::string_view unit, std::size_t start) {
    const auto word_end = end_of(unit, start, is_word);
    if (word_end == start) return {{}, {}, unit.substr(start, 1)};
    const auto word = unit.substr(start, word_end - start);
    auto at = word_end;
    if (unit.substr(at).starts_with("**"))
        at += 2;
    else if (unit.substr(at).starts_with("^"))
        at += 1;
    const auto exponent_start = at;
    if (at < unit.size() && unit[at] == '-') ++at;
    const auto end = end_of(unit, at, base::is_digit);
    if (end == at) return {word, {}, word};
    return {word, unit.substr(exponent_start, end - exponent_start), unit.substr(start, end - start)};
}

// Views into `unit`.
std::vector<Piece> pieces_of(const std::string& unit) {
    std::vector<Piece> pieces;
    for (std::size_t at = 0; at < unit.size(); at += pieces.back().whole.size()) pieces.push_back(piece_at(unit, at));
    return pieces;
}

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

bool is_unclear_ton(const UnitWord& word, UnitWords::Ton meant) {
    constexpr std::array<std::string_view, 2> tons{"ton", "tons"};
    if (meant == UnitWords::Ton::short_ton && is_one_of(word.name, tons)) return false;
    const auto name = in_lower_case(word.name);
    return is_one_of(name, tons) || is_one_of(after_prefix(name), tons) || is_one_of(after_prefix(word.name), tons);
}

// Reads a unit from left to right by the grammar of is_plain_unit().
class UnitGrammar {
public:
    explicit UnitGrammar(std::string_view text) : text_(text) {}

    bool is_whole() { return product(0) && at_ == text_.size(); }

private:
    static constexpr int deepest = 5;
    static constexpr double largest = 1e12;

    [[nodiscard]] char sign() const { return at_ < text_.size() ? text_[at_] : '\0'; }
    [[nodiscard]] bool is_digit_at(std::size_t at) const { return at < text_.size() && base::is_digit(text_[at]); }
    bool skip(char wanted) {
        const bool is_there = sign() == wanted;
        at_ += is_there ? 1 : 0;
        return is_there;
    }
    bool skip_spaces() {
        const auto begin = at_;
        while (skip(' ')) {
        }
        return at_ > begin;
    }

    bool product(int depth) {
        skip_spaces();
        if (!factor(depth)) return false;
        while (true) {
            bool goes_on = skip_spaces();
            if (at_ == text_.size() || sign() == ')') return true;
            goes_on = skip('/') || skip('*') || skip('.') || goes_on || is_word(sign());
            skip_spaces();
            if (!goes_on || !factor(depth)) return false;
        }
    }

    bool factor(int depth) {
        if (skip('(')) return depth < deepest && product(depth + 1) && skip(')') && exponent();
        if (skip('%') || skip('\'') || skip('"')) return true;
        if (base::is_digit(sign())) return number();
        const auto end = end_of(text_, at_, is_word);
        const bool has_letters = end > at_;
        at_ = end;
        return has_letters && exponent();
    }

    // None, or one digit with a sign: m2, m-2, m^2, m**2.
    bool exponent() {
        const bool is_announced = text_.substr(at_).starts_with("**") ? (at_ += 2, true) : skip('^');
        const bool has_sign = skip('-');
        if (!is_digit_at(at_)) return !is_announced && !has_sign;
        ++at_;
        return !is_digit_at(at_);
    }

    bool number() {
        const auto begin = at_;
        while (is_digit_at(at_)) ++at_;
        if (sign() == '.' && is_digit_at(at_ + 1)) ++at_;
        while (is_digit_at(at_)) ++at_;
        const auto value = std::strtod(std::string(text_.substr(begin, at_ - begin)).c_str(), nullptr);
        // What follows would be an exponent of ten, a power, or a shift.
        return value > 1 / largest && value < largest && sign() != '^' && sign() != '-' && sign() != '+' &&
               !text_.substr(at_).starts_with("**") && !is_power_of_ten();
    }

    [[nodiscard]] bool is_power_of_ten() const {
        if (sign() != 'e' && sign() != 'E') return false;
        const bool has_sign = at_ + 1 < text_.size() && (text_[at_ + 1] == '-' || text_[at_ + 1] == '+');
        return is_digit_at(at_ + (has_sign ? 2 : 1));
    }

    std::string_view text_;
    std::size_t at_ = 0;
};

}  // namespace

bool is_plain_unit(std::string_view unit) {
    const auto plain = in_plain_signs(unit);
    return UnitGrammar(plain).is_whole();
}

std::string in_lower_case(std::string_view text) {
    std::string result(text);
    for (char& letter : result)
        if (letter >= 'A' && letter <= 'Z') letter = static_cast<char>(letter - 'A' + 'a');
    return result;
}

std::vector<UnitWord> words_of(std::string_view unit) {
    std::vector<UnitWord> words;
    const auto plain = in_plain_signs(unit);
    for (const auto& piece : pieces_of(plain))
        if (!piece.word.empty()) words.push_back({std::string(piece.word), std::string(piece.exponent)});
    return words;
}

bool has_number(std::string_view unit) {
    const auto plain = in_plain_signs(unit);
    const auto pieces = pieces_of(plain);
    return std::any_of(pieces.begin(), pieces.end(), [](const Piece& piece) {
        return piece.word.empty() && (base::is_digit(piece.whole.front()) || piece.whole == "+");
    });
}

bool has_shift(std::string_view unit) {
    constexpr std::array<std::string_view, 4> shifts{"since", "after", "from", "ref"};
    if (unit.find('@') != std::string_view::npos) return true;
    const auto words = words_of(unit);
    return std::any_of(words.begin(), words.end(), [&](const UnitWord& word) {
        return std::find(shifts.begin(), shifts.end(), in_lower_case(word.name)) != shifts.end();
    });
}

std::string with_word_replaced(std::string_view unit, std::string_view word, std::string_view by) {
    std::string result;
    const auto plain = in_plain_signs(unit);
    for (const auto& piece : pieces_of(plain)) {
        result += !word.empty() && piece.word == word ? by : piece.word;
        result += piece.whole.substr(piece.word.size());
    }
    return result;
}

std::optional<std::string> why_unit_is_refused(const std::string& text, const UnitWords& words) {
    if (has_shift(text))
        return "a unit that counts from another origin: found " + base::shown(text) + "; write a plain unit";
    if (has_number(text))
        return "a number inside a unit: found " + base::shown(text) +
               "; write a plain unit, such as `MSF` for 1000 ft2";
    for (const auto& word : words_of(text)) {
        if (is_thousand_of_an_area(word))
            return "an ambiguous unit: found " + base::shown(text) + ", which would be read as (" + word.name + ")" +
                   word.exponent + "; write `MSF` for 1000 ft2";
        if (is_unclear_ton(word, words.ton))
            return "an ambiguous unit: found " + base::shown(text) +
                   "; write `t` for 1000 kg, `short_ton` for 2000 lb or `long_ton` for 2240 lb";
    }
    return std::nullopt;
}

}  // namespace flutebook::fields
