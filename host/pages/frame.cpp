#include "host/pages/frame.hpp"

#include "host/pages/assets.hpp"

namespace flutebook::pages {

namespace {

Address served(const Frame& frame, const std::string& name) {
    return frame.assets.at(asset(name).served_as);
}

Html head(const Frame& frame, std::string_view title) {
    Html result = html(
        "<meta charset=\"utf-8\"><meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">"
        "<title>{} - Flutebook</title>"
        "<link rel=\"icon\" type=\"image/svg+xml\" href=\"{}\"><link rel=\"stylesheet\" href=\"{}\">"
        "<link rel=\"stylesheet\" href=\"{}\">",
        title, served(frame, "icon.svg"), served(frame, "flutebook.css"), served(frame, "charts.css"));
    for (const std::string& script : frame.scripts)
        result += html("<script type=\"module\" src=\"{}\"></script>", served(frame, script));
    return html("<head>{}</head>\n", result);
}

// Two liners, and the flute between them.
Html brand() {
    return html(
        "<a class=\"brand\" href=\"{}\"><svg class=\"board-mark\" width=\"28\" height=\"18\" viewBox=\"0 0 28 18\" "
        "aria-hidden=\"true\"><path d=\"M1 2H27M1 16H27\"/><path d=\"M1 14c3.300 0 3.300-10 6.500-10s3.200 10 6.500 10"
        " 3.300-10 6.500-10 3.200 10 6.500 10\"/></svg><b>Flutebook</b></a>",
        Address("/"));
}

struct Entry {
    Place place;
    Role least;
    const char* name;
    Path path;
};

Html navigation(const Frame& frame) {
    static constexpr Entry entries[] = {
        {Place::quotes, Role::reader, "Quotes", "/quotes"}, {Place::orders, Role::reader, "Orders", "/orders"},
        {Place::months, Role::reader, "Months", "/months"}, {Place::models, Role::reader, "Models", "/models"},
        {Place::styles, Role::reader, "Styles", "/styles"}, {Place::plant, Role::reader, "Plant", "/plant"},
        {Place::guide, Role::reader, "Guide", "/guide"},    {Place::users, Role::keeper, "Users", "/users"}};
    Html links;
    for (const Entry& entry : entries) {
        if (!frame.may(entry.least)) continue;
        const Attribute current = entry.place == frame.place ? Attribute(" aria-current=\"page\"") : Attribute();
        links += html("<a href=\"{}\"{}>{}</a>", Address(entry.path), current, entry.name);
    }
    return links.is_empty() ? Html() : html("<nav aria-label=\"Pages\">{}</nav>", links);
}

Html at_the_desk(const Frame& frame) {
    Html result = html("<span class=\"plant\">{}</span>", frame.plant);
    if (!frame.person.empty())
        result += html("<a href=\"{}\">{}, {}</a>", Address("/session"), frame.person, role_name(frame.role));
    return html("<div class=\"who\">{}</div>", result);
}

Html notices(const Frame& frame) {
    Html items;
    bool is_plant_changed = false;
    for (const Notice& notice : frame.notices) {
        items += notice.kind == Notice::Kind::news ? html("<p>{}</p>\n", notice.text)
                                                   : html("<p class=\"warning\">{}</p>\n", notice.text);
        is_plant_changed = is_plant_changed || notice.kind == Notice::Kind::plant;
    }
    if (is_plant_changed && frame.may(Role::keeper))
        items += html("<form method=\"post\" action=\"{}\">{}<button>Reload the plant</button></form>\n",
                      Address("/reload"), token_field(frame));
    return items.is_empty() ? Html()
                            : html("<div class=\"notices\" id=\"notices\" role=\"status\">\n{}</div>\n", items);
}

}  // namespace

const char* role_name(Role role) {
    switch (role) {
        case Role::nobody:
            return "nobody";
        case Role::reader:
            return "reader";
        case Role::accountant:
            return "accountant";
        case Role::controller:
            return "controller";
        case Role::keeper:
            return "keeper";
    }
    return "";
}

std::string document(const Frame& frame, std::string_view title, const Html& body) {
    const Html page = html(
        "<body>\n<a class=\"skip\" href=\"{}\">Skip to the page</a>\n<header class=\"top\">{}{}{}</header>\n"
        "{}<main class=\"page\" id=\"main\">\n{}</main>\n</body>\n",
        Address::here().to("main"), brand(), navigation(frame), at_the_desk(frame), notices(frame), body);
    return html("<!doctype html>\n<html lang=\"en\">{}{}</html>\n", head(frame, title), page).text();
}

Html token_field(const Frame& frame) {
    return html("<input type=\"hidden\" name=\"token\" value=\"{}\">", frame.token);
}

}  // namespace flutebook::pages
