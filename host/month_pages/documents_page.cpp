#include "host/month_pages/documents_page.hpp"

#include "host/month_pages/month_text.hpp"
#include "host/pages/place_links.hpp"
#include "host/pages/report_parts.hpp"
#include "host/production/document_format.hpp"

namespace flutebook::pages {

namespace {

// Shown by the script, since without it nothing can be dropped.
Html drop_zone() {
    return html(
        "<div id=\"drop\" class=\"drop\" hidden><p><b>Drop CSV files here</b>, or <label class=\"choose\">choose them"
        "<input class=\"unseen\" id=\"files\" type=\"file\" accept=\".csv,text/csv\" multiple></label>.</p>"
        "<p class=\"small quiet\">Each is shown below with what it would post.</p></div>\n"
        "<div class=\"drop-said\"><span id=\"drop-said\" role=\"status\"></span>"
        "<button class=\"main\" id=\"post-all\" type=\"button\" hidden>Post these files</button></div>\n"
        "<div id=\"dropped\"></div>\n");
}

Html pasted_form(const Frame& frame) {
    return html(
        "<form class=\"act\" id=\"document\" method=\"post\" action=\"{}\">{}<p>Or paste the rows of one file:</p>"
        "<label class=\"field\"><span>Name of the file, as messages call it</span><input name=\"name\" "
        "maxlength=\"200\" placeholder=\"runs.csv\"></label>"
        "<label class=\"field\"><span>Its rows, the header row first</span><textarea name=\"text\" rows=\"6\" "
        "spellcheck=\"false\" required></textarea></label>"
        "<div><button>Show what it would post</button></div></form>\n",
        Address("/documents"), token_field(frame));
}

struct FormWords {
    production::Kind kind;
    const char* words;
};

constexpr FormWords form_words[] = {
    {production::Kind::paper, "paper issued to a corrugator; what came back with kg below zero"},
    {production::Kind::corrugator_run,
     "a run of a corrugator; roll_width, outs and web where they differ from the order"},
    {production::Kind::converter_run, "a run of a converter"},
    {production::Kind::weighed_scrap, "scrap, weighed"},
    {production::Kind::bale, "a bale"},
    {production::Kind::ticket, "a mill's ticket; sent may be left out"},
    {production::Kind::centre_cost, "a centre's cost of a month"},
    {production::Kind::count, "a count of what lies at a machine or in a stock"},
};

std::string header_row(production::Kind kind) {
    std::string text;
    for (const auto& rule : production::widest_form(kind).columns)
        text += (text.empty() ? "" : ",") + std::string(production::name_of(rule.column));
    return text;
}

// What somebody asks who has never made one.
Html forms() {
    Html rows;
    for (const auto& [kind, words] : form_words)
        rows += html("<tr><th scope=\"row\">{}</th><td class=\"hash\">{}</td></tr>\n", words, header_row(kind));
    return html(
        "<details id=\"forms\"><summary>The documents, and the header row of each</summary>"
        "<p class=\"note\">A row an event; ref is a number of its own, so that no row counts twice. What runs lost by "
        "trim, "
        "order changes and setup is worked out from them. note may be left out.</p>{}</details>\n",
        scrolling("The documents",
                  html("<table>{}<tbody>\n{}</tbody></table>\n", head_row({"Document", "its header row"}, 2), rows)));
}

Html month_links(const std::vector<ledger::Month>& months) {
    Html result;
    for (const ledger::Month month : months)
        result += html("<a class=\"button main\" href=\"{}\">Review {}</a>", month_address(month), month_words(month));
    return result;
}

Html warnings_html(const std::vector<std::string>& warnings) {
    Html items;
    for (const std::string& warning : warnings) items += html("<p class=\"warning\">{}</p>\n", warning);
    return items;
}

}  // namespace

Html documents_panel(const Frame& frame) {
    if (!frame.may(Role::controller)) return {};
    return panel("documents", "Post documents",
                 html("<span class=\"small quiet\">nothing is written before you have seen what it says</span>"),
                 html("{}{}{}", drop_zone(), pasted_form(frame), forms()));
}

Frame with_documents(const Frame& frame) {
    Frame result = frame;
    if (frame.may(Role::controller)) result.scripts.emplace_back("documents.js");
    return result;
}

std::string documents_page(const Frame& frame) {
    const Html lead = html(
        "<p class=\"lead\">Paper issued, runs, scrap, bales, tickets, costs and counts: CSV files that are known by "
        "their header row.</p>\n");
    return document(with_documents(frame), "Production documents",
                    html("<h1>Production documents</h1>\n{}{}", lead, documents_panel(frame)));
}

std::string posted_document_page(const Frame& frame, const std::vector<ledger::Month>& months,
                                 const std::vector<std::string>& warnings, const render::Report& report) {
    const PlaceLinks places(frame.open_plant);
    const Html ways = html("<div class=\"buttons\">{}<a class=\"button\" href=\"{}\">Send another</a></div>\n",
                           month_links(months), Address("/documents"));
    return document(frame, "Posted",
                    html("<h1>Posted</h1>\n<div class=\"stack\">{}{}{}</div>\n", ways, warnings_html(warnings),
                         report_html(report, "moved", &places)));
}

}  // namespace flutebook::pages
