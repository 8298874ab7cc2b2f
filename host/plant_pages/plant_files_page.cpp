#include "host/plant_pages/plant_files_page.hpp"

#include "host/pages/place_links.hpp"
#include "host/pages/report_parts.hpp"
#include "host/reports/quote_ladder.hpp"

namespace flutebook::pages {

using plant_answers::PlantFile;

namespace {

Html changed_note(const PlantFile& file) {
    if (!file.changed) return {};
    return html("<p class=\"warning\" id=\"changed\">The file {} since; shown is what this server works with.</p>\n",
                *file.changed);
}

Html doubtful_html(const OpenedFiles& opened) {
    if (opened.warnings.empty()) return {};
    const PlaceLinks places(&opened.plant);
    return section_panel("doubtful", reports::warnings_section(opened.warnings), &places);
}

}  // namespace

std::string plant_files_page(const Frame& frame, const OpenedFiles& opened) {
    Html rows;
    for (const PlantFile& file : opened.files)
        rows += html(
            "<tr><th scope=\"row\"><a href=\"{}\">{}</a></th><td class=\"num\">{}</td><td "
            "class=\"text\">{}</td></tr>\n",
            plant_file_address(file.name), file.name, file.lines.size(), file.changed.value_or("as it was read"));
    return document(
        frame, "The plant's files",
        html("<div class=\"title\"><h1>The plant's files</h1></div>\n<div class=\"stack\">\n{}<div class=\"panel\">"
             "<table id=\"files\"><thead><tr><th scope=\"col\">File</th><th scope=\"col\" class=\"num\">Lines</th>"
             "<th scope=\"col\" class=\"text\">Since this server "
             "began</th></tr></thead><tbody>\n{}</tbody></table></div>"
             "</div>\n",
             doubtful_html(opened), rows));
}

std::string plant_file_page(const Frame& frame, const PlantFile& file) {
    Html rows;
    for (std::size_t i = 0; i < file.lines.size(); ++i)
        rows += html("<tr id=\"L{}\"><th scope=\"row\">{}</th><td><code>{}</code></td></tr>\n", i + 1, i + 1,
                     file.lines[i]);
    return document(
        frame, file.name,
        html("<p class=\"back\"><a href=\"{}\">All files of the plant</a></p>\n<div class=\"title\"><h1>{}</h1></div>\n"
             "{}<div class=\"panel scroll\" role=\"group\" tabindex=\"0\" aria-label=\"{}\"><table class=\"numbered\">"
             "<tbody>\n{}</tbody></table></div>\n",
             Address("/plant"), file.name, changed_note(file), file.name, rows));
}

}  // namespace flutebook::pages
