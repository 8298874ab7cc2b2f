#include "host/pages/markup.hpp"

#include "host/render/escaping.hpp"
#include "host/render/text.hpp"

namespace flutebook::pages {

// Control characters are taken out, but for the line ends of a text area.
Part::Part(std::string_view text) {
    for (std::size_t begin = 0; begin <= text.size();) {
        const std::size_t end = text.find('\n', begin);
        if (begin > 0) text_ += '\n';
        text_ += render::markup_text(render::cleaned(text.substr(begin, end - begin)));
        if (end == std::string_view::npos) break;
        begin = end + 1;
    }
}

Part::Part(const Address& address) : text_(render::markup_text(address.text())) {}

Html HtmlWriting::filled(std::string_view literal, std::initializer_list<Part> parts) {
    Html result;
    std::size_t at = 0;
    for (const Part& part : parts) {
        const std::size_t place = literal.find("{}", at);
        result.text_ += literal.substr(at, place - at);
        result.text_ += part.text();
        at = place + 2;
    }
    result.text_ += literal.substr(at);
    return result;
}

}  // namespace flutebook::pages
