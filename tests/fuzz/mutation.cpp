#include "tests/fuzz/mutation.hpp"

#include <algorithm>
#include <cctype>
#include <charconv>
#include <cmath>

namespace flutebook::fuzz {

namespace {

// The bytes from `begin` to before `end`.
struct Stretch {
    std::size_t begin, end;
    [[nodiscard]] std::size_t length() const { return end - begin; }
};

bool is_digit(char sign) {
    return std::isdigit(static_cast<unsigned char>(sign)) != 0;
}

bool is_of_number(char sign) {
    return is_digit(sign) || sign == '.' || sign == '-';
}

bool is_of_word(char sign) {
    return std::isalnum(static_cast<unsigned char>(sign)) != 0 || sign == '_' || sign == '-' || sign == '+';
}

template <typename Belongs>
std::vector<Stretch> stretches(const std::string& text, const Belongs& belongs) {
    std::vector<Stretch> result;
    for (std::size_t at = 0; at < text.size();) {
        std::size_t end = at;
        while (end < text.size() && belongs(text[end])) ++end;
        if (end > at) result.push_back({at, end});
        at = end + 1;
    }
    return result;
}

std::vector<Stretch> numbers_in(const std::string& text) {
    auto result = stretches(text, is_of_number);
    const auto has_no_digit = [&](const Stretch& part) {
        return std::none_of(text.begin() + static_cast<std::ptrdiff_t>(part.begin),
                            text.begin() + static_cast<std::ptrdiff_t>(part.end), is_digit);
    };
    result.erase(std::remove_if(result.begin(), result.end(), has_no_digit), result.end());
    return result;
}

std::vector<Stretch> lines_in(const std::string& text) {
    return stretches(text, [](char sign) { return sign != '\n'; });
}

void replace(std::string& text, const Stretch& part, const std::string& with) {
    text.replace(part.begin, part.length(), with);
}

std::string piece(const std::string& text, const Stretch& part) {
    return text.substr(part.begin, part.length());
}

// A number that is written as people write it, of another size.
std::string scaled(const std::string& number, Draws& draws) {
    double value = 0;
    std::from_chars(number.data(), number.data() + number.size(), value);
    static const std::vector<double> factors = {0, -1, 0.001, 0.1, 0.5, 0.99, 1.01, 2, 10, 1000, 1e6, 1e12};
    std::string result(400, '\0');
    const auto end = std::to_chars(result.data(), result.data() + result.size(), value * draws.of(factors),
                                   std::chars_format::fixed);
    result.resize(static_cast<std::size_t>(end.ptr - result.data()));
    return result;
}

void change_number(std::string& text, Draws& draws) {
    static const std::vector<std::string> odd = {"0",
                                                 "-1",
                                                 "-0",
                                                 "1e308",
                                                 "1e999",
                                                 "nan",
                                                 "inf",
                                                 "0x10",
                                                 "010",
                                                 "1,5",
                                                 "1.550",
                                                 "1_000",
                                                 "0.000000001",
                                                 "999999999999999",
                                                 "2 m",
                                                 "87 in",
                                                 "350 ft/min",
                                                 "1 km2",
                                                 "1 1--",
                                                 "1 m**",
                                                 "1 lb/h",
                                                 "26 lb/MSF",
                                                 "0.9999999999999",
                                                 "\"5\"",
                                                 "1000001",
                                                 "10000000",
                                                 "10000001",
                                                 "",
                                                 ".5",
                                                 "5.",
                                                 "+5",
                                                 "1 EUR/t",
                                                 "2026-02-30",
                                                 "9999-12-31",
                                                 "0000-01-01"};
    const auto numbers = numbers_in(text);
    if (numbers.empty()) return;
    const Stretch& part = draws.of(numbers);
    replace(text, part, draws.one_in(3) ? draws.of(odd) : scaled(piece(text, part), draws));
}

void swap_words(std::string& text, Draws& draws) {
    const auto words = stretches(text, is_of_word);
    if (words.empty()) return;
    const std::string other = piece(text, draws.of(words));
    replace(text, draws.of(words), other);
}

void move_line(std::string& text, Draws& draws) {
    const auto lines = lines_in(text);
    if (lines.empty()) return;
    const Stretch& from = draws.of(lines);
    const std::string line = piece(text, from) + "\n";
    const Stretch& before = draws.of(lines);
    switch (draws.below(3)) {
        case 0:  // doubled
            text.insert(before.begin, line);
            break;
        case 1:  // lost
            replace(text, from, "");
            break;
        default:  // in the place of another
            replace(text, before, piece(text, from));
    }
}

void put_in(std::string& text, Draws& draws) {
    static const std::vector<std::string> signs = {std::string(1, '\0'),
                                                   "\x01",
                                                   "\x1b[2J",
                                                   "\x7f",
                                                   "\xC2\x9B",
                                                   "\xE2\x80\xAE",
                                                   "\xE2\x80\x8B",
                                                   "\xEF\xBB\xBF",
                                                   "\xFF",
                                                   "\xE2\x80",
                                                   "\xED\xA0\x80",
                                                   "\xF0\x9F\x93\xA6",
                                                   "\t",
                                                   "\r\n",
                                                   "\n",
                                                   " ",
                                                   ":",
                                                   ": ",
                                                   ",",
                                                   ";",
                                                   "{",
                                                   "}",
                                                   "[",
                                                   "]",
                                                   "&a ",
                                                   "*a",
                                                   "!!str ",
                                                   "\"",
                                                   "'",
                                                   "#",
                                                   " #",
                                                   "- ",
                                                   "? ",
                                                   "|\n",
                                                   ">\n",
                                                   "---\n",
                                                   "...\n",
                                                   "%TAG\n",
                                                   "<<: ",
                                                   "\\u202E",
                                                   "\\x00",
                                                   "=cmd",
                                                   "~",
                                                   "null",
                                                   "true"};
    text.insert(draws.below(text.size() + 1), draws.of(signs));
}

Stretch any_stretch(const std::string& text, Draws& draws, std::size_t longest) {
    const std::size_t begin = draws.below(text.size());
    return {begin, begin + 1 + draws.below(std::min(longest, text.size() - begin))};
}

void change_bytes(std::string& text, Draws& draws) {
    if (text.empty()) return;
    const Stretch part = any_stretch(text, draws, 60);
    switch (draws.below(4)) {
        case 0: {
            char& byte = text[part.begin];
            byte = static_cast<char>(static_cast<unsigned char>(byte) ^ (1U << draws.below(8)));
            break;
        }
        case 1:
            replace(text, part, "");
            break;
        case 2:
            text.insert(draws.below(text.size()), piece(text, part));
            break;
        default:
            text.resize(part.begin);
    }
}

void repeat(std::string& text, Draws& draws) {
    if (text.empty()) return;
    const std::string part = piece(text, any_stretch(text, draws, 20));
    std::string many;
    for (std::size_t left = draws.of(std::vector<std::size_t>{3, 100, 5000}); left > 0; --left) many += part;
    text.insert(draws.below(text.size()), many);
}

}  // namespace

std::string mutated(std::string text, Draws& draws) {
    for (std::size_t left = 1 + draws.below(4); left > 0; --left) {
        const std::size_t kind = draws.below(20);
        if (kind < 9)
            change_number(text, draws);
        else if (kind < 12)
            swap_words(text, draws);
        else if (kind < 14)
            move_line(text, draws);
        else if (kind < 17)
            put_in(text, draws);
        else if (kind < 19)
            change_bytes(text, draws);
        else
            repeat(text, draws);
    }
    return text;
}

}  // namespace flutebook::fuzz
