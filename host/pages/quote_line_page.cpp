#include "host/pages/quote_line_page.hpp"

#include <fmt/format.h>

#include "host/pages/markup.hpp"
#include "host/pages/report_parts.hpp"

namespace flutebook::pages {

std::string quote_line_page(const Frame& frame, const QuoteLinePage& line) {
    Html sections;
    for (std::size_t i = 0; i < line.sections.size(); ++i) {
        const std::string id = fmt::format("behind-{}", i + 1);
        sections += panel(id, line.sections[i].title, Html(),
                          html("<div class=\"behind\">{}</div>", blocks_html(line.sections[i], id)));
    }
    const std::string quantity = fmt::format("{:.0f}", line.quantity);
    const Address quote = Address("/quotes").at(line.number).with("quantity", quantity);
    const std::string title = fmt::format("{} of {}", line.figure, line.number);
    return document(
        frame, title,
        html("<header class=\"head\"><h1>{}</h1>\n<p class=\"quiet\">{}, <a href=\"{}\">{} at {}</a></p>"
             "</header>\n<div class=\"stack\" id=\"answer\">{}</div>\n",
             title, line.request, quote, line.number, render::whole_text(render::Number{line.quantity, 0}), sections));
}

}  // namespace flutebook::pages
