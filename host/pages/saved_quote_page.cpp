#include "host/pages/saved_quote_page.hpp"

#include <fmt/format.h>

#include "host/base/date.hpp"
#include "host/orders/enquiry_fields.hpp"
#include "host/pages/answer_parts.hpp"
#include "host/pages/place_links.hpp"
#include "host/pages/report_parts.hpp"
#include "host/render/report.hpp"
#include "host/reports/quote_list_report.hpp"
#include "host/reports/quote_report.hpp"

namespace flutebook::pages {

namespace {

Address address_of(const SavedQuotePage& quote) {
    return Address("/quotes").at(quote.listed.number);
}

Html button(const Address& address, std::string_view text) {
    return html("<a class=\"button\" href=\"{}\">{}</a>\n", address, text);
}

// A revision keeps the request's number, so that the ledger knows whose revision it is.
Html revise_button(const SavedQuotePage& quote) {
    const auto fields = orders::request_fields(quote.request_text);
    if (!fields) return {};
    return html("<a class=\"button main\" id=\"revise\" href=\"{}\">Revise</a>\n",
                desk_address(orders::enquiry_line(*fields)));
}

Html sheets(const Frame& frame, const SavedQuotePage& quote) {
    const Address folder("/quotes");
    const std::string& number = quote.listed.number;
    Html result;
    if (frame.may(Role::accountant)) result += revise_button(quote);
    result += button(folder.at(number + ".html").with("for", "customer"), "Offer");
    result += button(folder.at(number + ".html"), "Cost sheet");
    result += button(folder.at(number + ".xlsx"), "Workbook");
    result += button(folder.at(number + ".svg"), "Drawing");
    result += button(address_of(quote).at("recheck"), "What differs today");
    return html("<div class=\"buttons\" id=\"sheets\">{}</div>\n", result);
}

Html mark_form(const Frame& frame, const SavedQuotePage& quote) {
    Html states;
    for (const char* state : {"won", "lost", "open"}) states += html("<option value=\"{}\">{}</option>", state, state);
    return html(
        "<form id=\"mark\" method=\"post\" action=\"{}\" aria-label=\"Mark\">{}<div class=\"fields\">"
        "<label class=\"field\"><span>What became of it</span><select name=\"state\">{}</select></label>"
        "<label class=\"field\"><span>Why <span class=\"unit\">of a lost one</span></span><input name=\"why\" "
        "autocomplete=\"off\"></label></div><div class=\"buttons\"><button>Mark</button></div></form>\n",
        address_of(quote).at("mark"), token_field(frame), states);
}

Html order_form(const Frame& frame, const SavedQuotePage& quote) {
    Html quantities;
    for (const auto& item : quote.answer.quantities)
        if (item.is_makeable())
            quantities += html("<option value=\"{}\">{}</option>", fmt::format("{:.0f}", item.quantity()),
                               render::whole_text(render::Number{item.quantity(), 0}));
    if (quantities.is_empty()) return {};
    return html(
        "<form id=\"order\" method=\"post\" action=\"{}\" aria-label=\"Order\">{}<div class=\"fields\">"
        "<label class=\"field\"><span>Ordered</span><select name=\"quantity\">{}</select></label>"
        "<label class=\"field\"><span>As order <span class=\"unit\">its number</span></span><input name=\"as\" "
        "autocomplete=\"off\"></label></div><div class=\"buttons\"><button>Take as order</button></div></form>\n",
        address_of(quote).at("order"), token_field(frame), quantities);
}

Html beside_form(const SavedQuotePage& quote) {
    return html(
        "<form id=\"beside\" action=\"{}\" aria-label=\"Beside another\"><label class=\"field\"><span>Beside another "
        "quote"
        "</span><input name=\"beside\" value=\"{}\" autocomplete=\"off\"></label><div class=\"buttons\"><button>Show "
        "both"
        "</button></div></form>\n",
        address_of(quote), quote.listed.previous.value_or(""));
}

Html deeds(const Frame& frame, const SavedQuotePage& quote) {
    Html inside = sheets(frame, quote);
    if (frame.may(Role::accountant)) inside += mark_form(frame, quote) + order_form(frame, quote);
    return html("<aside class=\"panel deeds\" aria-label=\"What can be done\">{}{}</aside>\n", inside,
                beside_form(quote));
}

std::string saved_text(const answers::ListedQuote& listed) {
    return fmt::format("{}, saved {} by {}", listed.number, base::utc_day(listed.when), listed.who);
}

Html history(const SavedQuotePage& quote) {
    const auto report = reports::quote_history_report(quote.listed);
    return report ? section_panel("history", report->sections.front()) : no_part("history");
}

// As it was printed, of a quote whose figures were not kept otherwise.
Html parts(const SavedQuotePage& quote) {
    const PlaceLinks places(quote.view.open_plant, &quote.plant.files);
    if (!quote.printed.empty())
        return report_html(reports::printed_quote_report(quote.answer, quote.printed), "printed", &places);
    return answer_parts(quote.plant, quote.answer, quote.view,
                        {html("{}; money in {}", saved_text(quote.listed), quote.plant.currency)});
}

std::string heading(const SavedQuotePage& quote) {
    return fmt::format("{}, {}", quote.listed.number,
                       reports::request_heading(quote.plant, quote.answer.request).title);
}

Html facts(const SavedQuotePage& quote) {
    render::HtmlBlocks blocks("facts-");
    blocks.write_heading_facts(reports::request_heading(quote.plant, quote.answer.request).facts);
    return Html::rendered(blocks.taken());
}

Html column(const SavedQuotePage& quote, std::string_view id) {
    const Html ladder =
        quote.printed.empty() ? beside_parts(quote.plant, quote.answer, quote.view, std::string(id)) : parts(quote);
    return html(
        "<div class=\"stack\" id=\"{}\"><h2><a href=\"{}\">{}</a></h2>\n<p class=\"quiet\">{}</p>\n{}{}</div>\n", id,
        address_of(quote), heading(quote), saved_text(quote.listed), facts(quote), ladder);
}

}  // namespace

std::string saved_quote_page(const Frame& frame, const SavedQuotePage& quote) {
    Frame here = frame;
    here.place = Place::quotes;
    return document(
        here, heading(quote),
        html("<header class=\"head\"><h1>{}</h1>\n{}</header>\n<div class=\"desk\"><div class=\"stack side\">{}</div>"
             "<div class=\"stack\" id=\"answer\">\n{}{}</div></div>\n",
             heading(quote), facts(quote), deeds(frame, quote), history(quote), parts(quote)));
}

std::string quotes_beside_page(const Frame& frame, const SavedQuotePage& first, const SavedQuotePage& second) {
    Frame here = frame;
    here.place = Place::quotes;
    return document(here, fmt::format("{} beside {}", first.listed.number, second.listed.number),
                    html("<div class=\"title\"><h1>{} beside {}</h1></div>\n<div class=\"pair beside\">\n{}{}</div>\n",
                         first.listed.number, second.listed.number, column(first, "first"), column(second, "second")));
}

}  // namespace flutebook::pages
