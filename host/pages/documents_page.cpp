#include "host/pages/documents_page.hpp"

#include "host/pages/markup.hpp"
#include "host/pages/report_parts.hpp"

namespace flutebook::pages {

namespace {

Html document_form(const Frame& frame) {
    return html(
        "<form method=\"post\" action=\"{}\" id=\"document\">{}\n"
        "<p><label for=\"name\">Name of the file</label> <input id=\"name\" name=\"name\" "
        "value=\"document.csv\"></p>\n"
        "<p><label for=\"text\">Its rows, with the header row</label><br>"
        "<textarea id=\"text\" name=\"text\" rows=\"16\" cols=\"80\" required></textarea></p>\n"
        "<p><button>Show what it would post</button></p>\n</form>\n",
        Address("/documents"), token_field(frame));
}

Html what_moves(const std::vector<std::string>& warnings, const render::Report& report) {
    Html items;
    for (const std::string& warning : warnings) items += html("<p class=\"warning\">{}</p>\n", warning);
    return html("{}{}", items, report_html(report, "moved"));
}

}  // namespace

std::string documents_page(const Frame& frame) {
    return document(frame, "Production documents", html("<h1>Production documents</h1>\n{}", document_form(frame)));
}

std::string posted_document_page(const Frame& frame, const std::vector<std::string>& warnings,
                                 const render::Report& report) {
    return document(frame, "Posted",
                    html("<h1>Posted</h1>\n{}<p><a href=\"{}\">Send another</a></p>\n", what_moves(warnings, report),
                         Address("/documents")));
}

}  // namespace flutebook::pages
