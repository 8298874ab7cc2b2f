#include "host/pages/quote_list_page.hpp"

#include <algorithm>
#include <array>

#include "host/pages/place_links.hpp"
#include "host/pages/report_parts.hpp"
#include "host/reports/quote_list_report.hpp"

namespace flutebook::pages {

namespace {

struct SearchField {
    const char *name, *label, *like;
};

constexpr std::array<SearchField, 8> search_fields{{{"for", "Customer", "a part of the name"},
                                                    {"request", "Request", "all its revisions"},
                                                    {"style", "Style", ""},
                                                    {"board", "Board", ""},
                                                    {"size", "Inside size", "400x300x250"},
                                                    {"within", "Within", "5% or 10mm"},
                                                    {"from", "Saved from", "YYYY-MM-DD"},
                                                    {"to", "to", "YYYY-MM-DD"}}};

bool is_search(const FormFields& asked) {
    return std::any_of(asked.begin(), asked.end(), [](const auto& field) { return !field.second.empty(); });
}

Html state_choice(const std::string& chosen) {
    Html options = html("<option value=\"\"></option>");
    for (const char* state : {"open", "won", "lost"})
        options += html("<option value=\"{}\"{}>{}</option>", state,
                        chosen == state ? Attribute(" selected") : Attribute(), state);
    return html("<label class=\"field\"><span>State</span><select name=\"state\">{}</select></label>\n", options);
}

Html search_form(const FormFields& asked) {
    Html fields;
    for (const SearchField& field : search_fields)
        fields += html(
            "<label class=\"field\"><span>{} <span class=\"unit\">{}</span></span><input name=\"{}\" value=\"{}\" "
            "autocomplete=\"off\"></label>\n",
            field.label, field.like, field.name, field_value(asked, field.name));
    fields += state_choice(field_value(asked, "state"));
    return html(
        "<form class=\"panel search\" id=\"search\" action=\"{}\" aria-label=\"Find quotes\"><div class=\"fields\">\n{}"
        "</div><div class=\"buttons\"><button class=\"main\">Find</button><a class=\"button\" "
        "href=\"{}\">All</a></div></form>\n",
        Address("/quotes"), fields, Address("/quotes"));
}

// A quote's number leads to it.
class QuoteLinks : public render::FigureWalk {
public:
    [[nodiscard]] std::string address(const std::string& number) const override {
        return Address("/quotes").at(number).text();
    }
    [[nodiscard]] std::string opened(const std::string&) const override { return ""; }
};

Html older_link(const SavedQuotesList& quotes) {
    if (!quotes.list.has_more) return {};
    Address older("/quotes");
    for (const auto& [name, value] : quotes.asked)
        if (!value.empty() && name != "before") older = older.with(name, value);
    return html("<div class=\"buttons\"><a class=\"button\" id=\"older\" href=\"{}\">Older quotes</a></div>\n",
                older.with("before", quotes.list.quotes.back().number));
}

Html nothing_found(const Frame& frame, const SavedQuotesList& quotes) {
    if (is_search(quotes.asked)) return html("<p class=\"panel\" id=\"none\">No saved quote matches.</p>\n");
    const Html start = frame.may(Role::accountant)
                           ? html(" <a href=\"{}\">Quote the first enquiry</a>.", Address("/quotes/new"))
                           : Html();
    return html("<p class=\"panel\" id=\"none\">No quote is saved yet.{}</p>\n", start);
}

Html found(const SavedQuotesList& quotes) {
    const render::Report report = reports::quote_list_report(quotes.units, quotes.list);
    const QuoteLinks links;
    const render::ReportSection& section = report.sections.front();
    return panel("found", section.title, Html(), blocks_html(section, "quotes", &links) + older_link(quotes));
}

}  // namespace

std::string quote_list_page(const Frame& frame, const SavedQuotesList& quotes) {
    Frame here = frame;
    here.place = Place::quotes;
    const Html start = frame.may(Role::accountant)
                           ? html("<a class=\"button main end\" href=\"{}\">New quote</a>", Address("/quotes/new"))
                           : Html();
    Html complaints;
    for (const std::string& complaint : quotes.complaints)
        complaints += html("<p>{}</p>\n", told(frame.open_plant, complaint));
    return document(
        here, "Quotes",
        html("<div class=\"title\"><h1>Quotes</h1>{}</div>\n{}<div class=\"complaints\" role=\"alert\">{}</div>\n{}",
             start, search_form(quotes.asked), complaints,
             quotes.list.quotes.empty() ? nothing_found(frame, quotes) : found(quotes)));
}

}  // namespace flutebook::pages
