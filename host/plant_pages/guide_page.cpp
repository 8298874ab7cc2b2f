#include "host/plant_pages/guide_page.hpp"

#include "host/plant_pages/markdown.hpp"

namespace flutebook::pages {

using plant_answers::Guide;

std::string guide_list_page(const Frame& frame, const std::vector<Guide>& guides) {
    Html items;
    for (const Guide& guide : guides)
        items += html("<div class=\"panel\"><h2><a href=\"{}\">{}</a></h2>\n<p>{}</p></div>\n",
                      Address("/guide").at(guide.name), guide.title, guide.about);
    return document(
        frame, "Guides",
        html("<div class=\"title\"><h1>Guides</h1></div>\n<div class=\"stack guides\">\n{}</div>\n", items));
}

std::string guide_page(const Frame& frame, const Guide& guide) {
    return document(frame, guide.title,
                    html("<p class=\"back\"><a href=\"{}\">All guides</a></p>\n<article class=\"panel prose\">\n{}"
                         "</article>\n",
                         Address("/guide"), markdown_html(guide.text)));
}

}  // namespace flutebook::pages
