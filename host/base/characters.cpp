// UTF-8 by utf8proc: whether it is well formed, what is a control character, how wide a character is shown.
#include "host/base/characters.hpp"

#include <utf8proc.h>

namespace flutebook::base {

Character character_at(std::string_view text, std::size_t at) {
    const auto first = static_cast<unsigned char>(text[at]);
    if (first == 0) return {1, CharacterFault::nul, 1};
    // Most of every text, without a call.
    if (first >= 0x20 && first < 0x7F) return {1, CharacterFault::none, 1};
    const auto bytes = text.substr(at);
    utf8proc_int32_t point = -1;
    const auto length = utf8proc_iterate(reinterpret_cast<const utf8proc_uint8_t*>(bytes.data()),
                                         static_cast<utf8proc_ssize_t>(bytes.size()), &point);
    if (length <= 0) return {1, CharacterFault::encoding, 1};
    const auto size = static_cast<std::size_t>(length);
    if (utf8proc_category(point) == UTF8PROC_CATEGORY_CC) return {size, CharacterFault::control, 1};
    return {size, CharacterFault::none, static_cast<std::size_t>(utf8proc_charwidth(point))};
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
