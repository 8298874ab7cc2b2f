// One scan over a unit's text serves all questions: it is cut into words with their exponents and whatever lies
// between.
//
// An exponent is a whole number that follows a word, at once or after `^` or `**`, perhaps with a minus sign.
#include "host/catalogue/unit_text.hpp"

#include <algorithm>
#include <array>
#include <cstddef>

namespace flutebook::catalogue {

namespace {

bool is_digit(char sign) {
    return sign >= '0' && sign <= '9';
}

bool is_word(char sign) {
    return (sign >= 'a' && sign <= 'z') || (sign >= 'A' && sign <= 'Z') || sign == '_' ||
           static_cast<unsigned char>(sign) >= 0x80;
}

// A piece is a word with its exponent, or one sign that is neither.
struct Piece {
    std::string_view word, exponent;
    std::string_view whole;
};

std::size_t end_of(std::string_view text, std::size_t at, bool (*belongs)(char)) {
    while (at < text.size() && belongs(text[at])) ++at;
    return at;
}

Piece piece_at(std::string_view unit, std::size_t start) {
    const auto word_end = end_of(unit, start, is_word);
    if (word_end == start) return {{}, {}, unit.substr(start, 1)};
    auto at = word_end;
    if (unit.substr(at).starts_with("**"))
        at += 2;
    else if (unit.substr(at).starts_with("^"))
        at += 1;
    const auto exponent_start = at;
    if (at < unit.size() && unit[at] == '-') ++at;
    const auto digits_end = end_of(unit, at, is_digit);
    const auto word = unit.substr(start, word_end - start);
    if (digits_end == at) return {word, {}, word};
    return {word, unit.substr(exponent_start, digits_end - exponent_start), unit.substr(start, digits_end - start)};
}

std::vector<Piece> pieces_of(std::string_view unit) {
    std::vector<Piece> pieces;
    for (std::size_t at = 0; at < unit.size(); at += pieces.back().whole.size()) pieces.push_back(piece_at(unit, at));
    return pieces;
}

std::string lower(std::string_view text) {
    std::string made(text);
    for (char& letter : made)
        if (letter >= 'A' && letter <= 'Z') letter = static_cast<char>(letter - 'A' + 'a');
    return made;
}

}  // namespace

std::vector<UnitWord> words_of(std::string_view unit) {
    std::vector<UnitWord> words;
    for (const auto& piece : pieces_of(unit))
        if (!piece.word.empty()) words.push_back({std::string(piece.word), std::string(piece.exponent)});
    return words;
}

bool has_number(std::string_view unit) {
    const auto pieces = pieces_of(unit);
    return std::any_of(pieces.begin(), pieces.end(), [](const Piece& piece) {
        return piece.word.empty() && (is_digit(piece.whole.front()) || piece.whole == "+");
    });
}

bool has_shift(std::string_view unit) {
    constexpr std::array<std::string_view, 4> shifts{"since", "after", "from", "ref"};
    if (unit.find('@') != std::string_view::npos) return true;
    const auto words = words_of(unit);
    return std::any_of(words.begin(), words.end(), [&](const UnitWord& word) {
        return std::find(shifts.begin(), shifts.end(), lower(word.name)) != shifts.end();
    });
}

std::string with_word_replaced(std::string_view unit, std::string_view word, std::string_view by) {
    std::string made;
    for (const auto& piece : pieces_of(unit)) {
        made += piece.word == word && !word.empty() ? std::string(by) : std::string(piece.word);
        made += piece.whole.substr(piece.word.size());
    }
    return made;
}

}  // namespace flutebook::catalogue
