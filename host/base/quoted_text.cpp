// Quoting in messages. Texts of documents hold no control characters. A cut falls between characters.
#include "host/base/quoted_text.hpp"

#include <fmt/format.h>

#include <cstddef>

#include "host/base/characters.hpp"

namespace flutebook::base {

namespace {

constexpr std::size_t longest_shown = 40;  // bytes

}  // namespace

std::string shortened(std::string_view text) {
    if (text.size() <= longest_shown) return std::string(text);
    std::size_t end = 0;
    for (std::size_t next = 0; next <= longest_shown; next += character_at(text, next).length) end = next;
    return std::string(text.substr(0, end)) + "...";
}

std::string shown(std::string_view text) {
    return fmt::format("`{}`", shortened(text));
}

}  // namespace flutebook::base
