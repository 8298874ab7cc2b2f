// Which bytes are plain text that a person wrote: UTF-8 without control characters.
#pragma once

#include <cstddef>
#include <string_view>

namespace flutebook::base {

enum class CharacterFault { none, nul, control, encoding };

/// A character at some byte of a text, and what is wrong with it. Tab, line feed and carriage return are `control` like
/// the others: the caller knows where they may stand.
struct Character {
    std::size_t length;  // bytes; 1 where the encoding is wrong
    CharacterFault fault;
    std::size_t columns;  // that it takes on a terminal: 0 to 2; 1 where something is wrong
};

/// An ASCII digit, whatever the locale.
[[nodiscard]] constexpr bool is_digit(char sign) {
    return sign >= '0' && sign <= '9';
}

/// `at` lies within `text`.
[[nodiscard]] Character character_at(std::string_view text, std::size_t at);

/// Whether the text is one line of plain text.
[[nodiscard]] bool is_plain_line(std::string_view text);

}  // namespace flutebook::base
