#include "host/pages/refusal_page.hpp"

#include "host/pages/markup.hpp"
#include "host/pages/place_links.hpp"

namespace flutebook::pages {

namespace {

const char* title_of(int status) {
    switch (status) {
        case 401:
            return "Nobody has signed in here";
        case 403:
            return "Not for this person";
        case 404:
            return "There is no such page";
        case 409:
            return "The ledger says no";
        case 422:
            return "Refused";
        case 429:
            return "Too often";
        case 503:
            return "Busy";
        default:
            return status >= 500 ? "Something failed" : "Not understood";
    }
}

}  // namespace

std::string refusal_page(const Frame& frame, const Refusal& refusal) {
    Html items;
    for (const std::string& line : refusal.lines) items += html("<li>{}</li>\n", told(frame.open_plant, line));
    const char* title = title_of(refusal.status);
    return document(frame, title, html("<h1>{}</h1>\n<ul class=\"faults\" id=\"faults\">\n{}</ul>\n", title, items));
}

}  // namespace flutebook::pages
