// UTF-8, decoded no further than needed to tell whether it is well formed.
#include "host/base/characters.hpp"

namespace flutebook::base {

namespace {

// Of a character that starts with this byte; 0 where none does.
std::size_t announced_length(unsigned char first) {
    if (first < 0x80) return 1;
    if (first >= 0xC2 && first <= 0xDF) return 2;
    if (first >= 0xE0 && first <= 0xEF) return 3;
    return first >= 0xF0 && first <= 0xF4 ? 4 : 0;
}

// The second byte shuts out spellings longer than needed, surrogates, and what lies beyond Unicode.
bool second_fits(unsigned char first, unsigned char second) {
    if (first == 0xE0) return second >= 0xA0 && second <= 0xBF;
    if (first == 0xED) return second >= 0x80 && second <= 0x9F;
    if (first == 0xF0) return second >= 0x90 && second <= 0xBF;
    if (first == 0xF4) return second >= 0x80 && second <= 0x8F;
    return second >= 0x80 && second <= 0xBF;
}

}  // namespace

Character character_at(std::string_view text, std::size_t at) {
    const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[at + i]); };
    const auto first = byte(0);
    if (first == 0) return {1, CharacterFault::nul};
    if (first < 0x20 || first == 0x7F) return {1, CharacterFault::control};
    const auto length = announced_length(first);
    if (length == 0 || at + length > text.size()) return {1, CharacterFault::encoding};
    if (length > 1 && !second_fits(first, byte(1))) return {1, CharacterFault::encoding};
    for (std::size_t i = 2; i < length; ++i)
        if (byte(i) < 0x80 || byte(i) > 0xBF) return {1, CharacterFault::encoding};
    // U+0080 to U+009F are control characters as well.
    if (first == 0xC2 && byte(1) < 0xA0) return {1, CharacterFault::control};
    return {length, CharacterFault::none};
}

bool is_plain_line(std::string_view text) {
    for (std::size_t at = 0; at < text.size();) {
        const auto character = character_at(text, at);
        if (character.fault != CharacterFault::none) return false;
        at += character.length;
    }
    return true;
}

}  // namespace flutebook::base
