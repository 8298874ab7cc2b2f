// UTF-8 by utf8proc: whether it is well formed, what is a control character or cannot be seen, how wide a character is.
#include "host/base/characters.hpp"

#include <fmt/format.h>
#include <utf8proc.h>

namespace flutebook::base {

namespace {

struct CodePoint {
    utf8proc_int32_t value;
    std::size_t length;  // bytes; 0 where they are no UTF-8
};

CodePoint code_point_at(std::string_view text, std::size_t at) {
    const auto bytes = text.substr(at);
    CodePoint result{-1, 0};
    const auto length = utf8proc_iterate(reinterpret_cast<const utf8proc_uint8_t*>(bytes.data()),
                                         static_cast<utf8proc_ssize_t>(bytes.size()), &result.value);
    if (length > 0) result.length = static_cast<std::size_t>(length);
    return result;
}

CharacterFault fault_of(utf8proc_int32_t point) {
    switch (utf8proc_category(point)) {
        case UTF8PROC_CATEGORY_CC:
            return CharacterFault::control;
        case UTF8PROC_CATEGORY_CF:  // bidirectional controls, zero-width characters
        case UTF8PROC_CATEGORY_ZL:
        case UTF8PROC_CATEGORY_ZP:
            return CharacterFault::invisible;
        default:
            // Fillers and selectors, which Unicode lets a font leave out.
            return utf8proc_get_property(point)->ignorable != 0 ? CharacterFault::invisible : CharacterFault::none;
    }
}

bool is_plain_ascii(char sign) {
    return sign >= 0x20 && sign < 0x7F;
}

}  // namespace

Character character_at(std::string_view text, std::size_t at) {
    if (text[at] == '\0') return {1, CharacterFault::nul, 1};
    // Most of every text, without a call.
    if (is_plain_ascii(text[at])) return {1, CharacterFault::none, 1};
    const CodePoint point = code_point_at(text, at);
    if (point.length == 0) return {1, CharacterFault::encoding, 1};
    const CharacterFault fault = fault_of(point.value);
    if (fault != CharacterFault::none) return {point.length, fault, 1};
    return {point.length, fault, static_cast<std::size_t>(utf8proc_charwidth(point.value))};
}

std::string fault_text(std::string_view text, std::size_t at) {
    switch (character_at(text, at).fault) {
        case CharacterFault::nul:
            return "a NUL byte";
        case CharacterFault::control:
            return "a control character";
        case CharacterFault::invisible:
            return fmt::format("the invisible character U+{:04X}", code_point_at(text, at).value);
        case CharacterFault::encoding:
            return "bytes that are not UTF-8";
        case CharacterFault::none:
            break;
    }
    return "plain text";
}

std::optional<std::size_t> first_fault(std::string_view line) {
    for (std::size_t at = 0; at < line.size();) {
        if (is_plain_ascii(line[at])) {
            ++at;
            continue;
        }
        const Character character = character_at(line, at);
        if (character.fault != CharacterFault::none) return at;
        at += character.length;
    }
    return std::nullopt;
}

bool is_plain_line(std::string_view text) {
    return !first_fault(text);
}

}  // namespace flutebook::base
