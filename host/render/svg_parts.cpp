#include "host/render/svg_parts.hpp"

#include <fmt/format.h>

#include "host/render/escaping.hpp"
#include "host/render/text.hpp"

namespace flutebook::render {

std::string svg_number(double value) {
    std::string text = fmt::format("{:.2f}", value);
    text.erase(text.find_last_not_of('0') + 1);
    if (text.back() == '.') text.pop_back();
    return text == "-0" ? "0" : text;
}

std::string svg_text(const std::string& text) {
    return markup_text(cleaned(text));
}

}  // namespace flutebook::render
