#include "host/pages/quote_line_page.hpp"

#include <fmt/format.h>

#include "host/pages/markup.hpp"
#include "host/pages/place_links.hpp"
#include "host/pages/report_parts.hpp"
#include "host/reports/quote_report.hpp"
#include "host/reports/quote_sections.hpp"

namespace flutebook::pages {

namespace {

Html origin(const Frame& frame, const QuoteLinePage& line, const std::string& piece, const answers::Quote& quote) {
    const reports::SheetContext context(line.plant, line.answer.request);
    const std::string id = piece.empty() ? "behind" : "behind-" + piece;
    const render::ReportSection section =
        without_folder(reports::explain_section(context.units, line.figure, quote), line.plant.folder);
    const PlaceLinks places(frame.open_plant, &line.plant.files);
    return panel(id, piece.empty() ? section.title : piece + ": " + section.title, Html(),
                 html("<div class=\"behind\">{}</div>", blocks_html(section, id, &places)));
}

Html origins(const Frame& frame, const QuoteLinePage& line) {
    Html result;
    if (const auto& quote = line.answer.quantities[line.quantity].quote) result += origin(frame, line, "", *quote);
    for (const auto& piece : line.answer.pieces)
        if (const auto& quote = piece.quantities[line.quantity].quote)
            result += origin(frame, line, piece.name, *quote);
    return result;
}

}  // namespace

std::string quote_line_page(const Frame& frame, const QuoteLinePage& line) {
    const double quantity = line.answer.quantities[line.quantity].quantity();
    const Address quote = Address("/quotes").at(line.number).with("quantity", fmt::format("{:.0f}", quantity));
    const std::string title = fmt::format("{} of {}", line.figure, line.number);
    return document(frame, title,
                    html("<header class=\"head\"><h1>{}</h1>\n<p class=\"quiet\">{}, <a href=\"{}\">{} at {}</a></p>"
                         "</header>\n<div class=\"stack\" id=\"answer\">{}</div>\n",
                         title, reports::request_heading(line.plant, line.answer.request).title, quote, line.number,
                         render::whole_text(render::Number{quantity, 0}), origins(frame, line)));
}

}  // namespace flutebook::pages
