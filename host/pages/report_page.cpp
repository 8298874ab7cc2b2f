#include "host/pages/report_page.hpp"

#include "host/pages/place_links.hpp"
#include "host/pages/report_parts.hpp"

namespace flutebook::pages {

std::string report_page(const Frame& frame, const std::string& title, const std::vector<render::Report>& reports) {
    return report_page(frame, title, reports, Html());
}

std::string report_page(const Frame& frame, const std::string& title, const std::vector<render::Report>& reports,
                        const Html& above) {
    Html body = above;
    const bool has_heading = !reports.empty() && reports.front().heading;
    if (!has_heading) body += html("<div class=\"title\"><h1>{}</h1></div>\n", title);
    const PlaceLinks places(frame.open_plant);
    for (std::size_t i = 0; i < reports.size(); ++i) body += report_html(reports[i], "r" + std::to_string(i), &places);
    return document(frame, title, body);
}

}  // namespace flutebook::pages
