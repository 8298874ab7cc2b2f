#include "host/plant_pages/styles_page.hpp"

#include <fmt/format.h>

#include "host/pages/desk_state.hpp"
#include "host/pages/place_links.hpp"
#include "host/pages/report_parts.hpp"
#include "host/plant_answers/plant_files.hpp"
#include "host/plant_reports/style_check_report.hpp"
#include "host/plant_reports/style_report.hpp"

namespace flutebook::pages {

using plant_answers::ListedStyle;
using plant_answers::ShownStyle;

namespace {

Address style_address(const std::string& code) {
    return Address("/styles").at(code);
}

Html search_html(const FoundStyles& found) {
    return html(
        "<form class=\"panel search short\" id=\"search\" action=\"{}\" aria-label=\"Find a style\"><label "
        "class=\"field\">"
        "<span>Code or words of the title</span><input type=\"search\" name=\"for\" value=\"{}\" autocomplete=\"off\">"
        "</label><div class=\"buttons\"><button class=\"main\">Find</button></div></form>\n",
        Address("/styles"), found.wanted);
}

Html list_html(const FoundStyles& found) {
    if (found.list.styles.empty()) return html("<p>No style has these words in its code or title.</p>\n");
    Html rows;
    for (const ListedStyle& style : found.list.styles) {
        const Attribute current = style.code == found.chosen ? Attribute(" aria-current=\"true\"") : Attribute();
        rows += html("<tr><th scope=\"row\"><a href=\"{}\"{}>{}</a></th><td>{}</td></tr>\n",
                     Address("/styles").with("for", found.wanted).with("style", style.code).to("picture"), current,
                     style.code, style.title);
    }
    return html(
        "<div class=\"scroll listed\" role=\"group\" tabindex=\"0\" aria-label=\"Styles\"><table><thead><tr>"
        "<th scope=\"col\">Code</th><th scope=\"col\">Title</th></tr></thead><tbody>\n{}</tbody></table></div>\n",
        rows);
}

Html picture_html(const FoundStyles& found) {
    if (found.chosen.empty()) return no_part("picture");
    Html inside = html("<p>The customer's own drawing gives its blank: there is nothing to draw.</p>\n");
    if (found.picture) {
        render::ReportSection section{""};
        section.blocks.emplace_back(plant_reports::style_drawings(found.plant, *found.picture));
        inside = blocks_html(section, "picture");
    }
    const std::string title = found.picture ? found.chosen + " " + found.picture->title : found.chosen;
    return panel("picture", title,
                 html("<a class=\"end\" href=\"{}\">Sizes, scores and proof</a>", style_address(found.chosen)), inside);
}

std::string board_asked(const StylePage& page) {
    const std::string asked = field_value(page.asked, "board");
    return asked.empty() && page.shown ? page.shown->board : asked;
}

std::string size_asked(const StylePage& page) {
    const std::string asked = field_value(page.asked, "inside");
    if (!asked.empty() || !page.shown) return asked;
    std::string result;
    for (const double length_mm : page.shown->inside_mm)
        result += fmt::format("{}{}", result.empty() ? "" : "x", length_mm);
    return result;
}

Html form_html(const StylePage& page) {
    Html boards;
    for (const plant::Board& board : page.plant.boards)
        boards += html("<option value=\"{}\"{}>{}</option>", board.code,
                       board.code == board_asked(page) ? Attribute(" selected") : Attribute(), board.code);
    Html measures;
    for (const box_styles::AskedMeasure& ask : page.style.asks) {
        const std::string name = measure_prefix + ask.name;
        measures += html(
            "<label class=\"field\"><span>{} <span class=\"unit\">{}; else {}</span></span><input name=\"{}\" "
            "value=\"{}\" autocomplete=\"off\"></label>\n",
            ask.name, ask.says, ask.initial.text, name, field_value(page.asked, name));
    }
    return html(
        "<form class=\"panel search short\" id=\"size\" action=\"{}\" aria-label=\"Draw it at a size\"><div "
        "class=\"fields\">\n"
        "<label class=\"field\"><span>Inside <span class=\"unit\">mm, LxBxH</span></span><input name=\"inside\" "
        "value=\"{}\" autocomplete=\"off\"></label>\n<label class=\"field\"><span>Board</span><select name=\"board\">{}"
        "</select></label>\n{}</div><div class=\"buttons\"><button class=\"main\">Draw</button></div></form>\n",
        style_address(page.style.code), size_asked(page), boards, measures);
}

// Of a style that stands in a file of the plant; the library's stand in the program.
Html origin_html(const StylePage& page) {
    const std::string file = plant_answers::name_in_plant(page.plant, page.style.place.file);
    if (place_address(page.plant, file, page.style.place.line).empty())
        return html("<span class=\"quiet\">of the program's library</span>");
    return html("<span class=\"quiet\">the plant's own: <a class=\"place\" href=\"{}\">{}:{}</a></span>",
                plant_line_address(file, page.style.place.line), file, page.style.place.line);
}

Html complaints_html(const Frame& frame, const std::vector<std::string>& complaints) {
    Html items;
    for (const std::string& complaint : complaints) items += html("<p>{}</p>\n", told(frame.open_plant, complaint));
    return html("<div class=\"complaints\" role=\"alert\">{}</div>\n", items);
}

Html drawn_html(const StylePage& page) {
    if (!page.shown) return {};
    render::Report report = plant_reports::style_report(page.plant, *page.shown);
    report.heading.reset();
    return report_html(report, "style");
}

Html proof_html(const StylePage& page) {
    if (!page.check) return {};
    Html inside;
    const render::Report report = plant_reports::style_check_report(page.plant, *page.check);
    for (const render::ReportSection& section : report.sections)
        inside += html("<h3>{}</h3>\n{}", section.title, blocks_html(section, "proof"));
    return panel("proof", "Proof: drawn and folded", Html(), inside);
}

}  // namespace

std::string styles_page(const Frame& frame, const FoundStyles& found) {
    const Html count = html("<span class=\"small quiet\">{}</span>", found.list.styles.size());
    return document(frame, "Styles",
                    html("<div class=\"title\"><h1>Styles</h1></div>\n{}<div class=\"pair chosen\" id=\"answer\">\n{}{}"
                         "</div>\n",
                         search_html(found), panel("found", "Found", count, list_html(found)), picture_html(found)));
}

std::string style_page(const Frame& frame, const StylePage& page) {
    return document(
        frame, "Style " + page.style.code,
        html("<p class=\"back\"><a href=\"{}\">All styles</a></p>\n<div class=\"title\"><h1>{} {}</h1>{}</div>\n{}{}"
             "<div class=\"stack\">\n{}{}</div>\n",
             Address("/styles"), page.style.code, page.style.title, origin_html(page),
             page.style.is_outline ? Html() : form_html(page), complaints_html(frame, page.complaints),
             drawn_html(page), proof_html(page)));
}

}  // namespace flutebook::pages
