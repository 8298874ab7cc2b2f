// Which bytes are plain text that a person wrote: UTF-8 that can be seen. Every place where a name, a number or a
// reason is read uses it: plant files, requests, documents, the command line, a plugin's description.
//
// Refused are control characters (C0, C1) and what no reader sees: bidirectional controls (U+202E), line and paragraph
// separators, zero-width characters, fillers. With them two names look alike, or a line reads in another order than the
// program takes it.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace flutebook::base {

enum class CharacterFault { none, nul, control, invisible, encoding };

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

/// What stands at that byte, for a message: "a NUL byte", "the invisible character U+202E".
[[nodiscard]] std::string fault_text(std::string_view text, std::size_t at);

/// The first byte of a line where something is wrong.
[[nodiscard]] std::optional<std::size_t> first_fault(std::string_view line);

/// Whether the text is one line of plain text.
[[nodiscard]] bool is_plain_line(std::string_view text);

}  // namespace flutebook::base
