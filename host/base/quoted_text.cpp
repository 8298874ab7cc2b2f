// Quoting in messages. Texts of documents hold no control characters. A cut falls between characters: a byte 10xxxxxx
// continues one.
#include "host/base/quoted_text.hpp"

#include <fmt/format.h>

#include <cstddef>

namespace flutebook::base {

namespace {

constexpr std::size_t longest_shown = 40;

bool continues(char byte) {
    return (static_cast<unsigned char>(byte) & 0xC0U) == 0x80U;
}

}  // namespace

std::string shortened(std::string_view text) {
    auto end = text.size();
    if (end > longest_shown)
        for (end = longest_shown; end > 0 && continues(text[end]);) --end;
    std::string cut(text.substr(0, end));
    return end < text.size() ? cut + "..." : cut;
}

std::string shown(std::string_view text) {
    return fmt::format("`{}`", shortened(text));
}

}  // namespace flutebook::base
