#include "host/pages/report_parts.hpp"

namespace flutebook::pages {

Html blocks_html(const render::ReportSection& section, const std::string& prefix, const render::FigureWalk* walk) {
    render::HtmlBlocks blocks(prefix + "-", walk);
    for (const render::Block& block : section.blocks) std::visit([&](const auto& item) { blocks.write(item); }, block);
    return Html::rendered(blocks.taken());
}

Html panel(std::string_view id, std::string_view title, const Html& aside, const Html& inside) {
    return html(
        "<section class=\"panel\" id=\"{}\" aria-labelledby=\"{}-head\"><header><h2 id=\"{}-head\">{}</h2>{}</header>\n"
        "{}</section>\n",
        id, id, id, title, aside, inside);
}

Html section_panel(std::string_view id, const render::ReportSection& section, const render::FigureWalk* walk) {
    if (section.blocks.empty()) return no_part(id);
    return panel(id, section.title, Html(), blocks_html(section, std::string(id), walk));
}

Html no_part(std::string_view id) {
    return html("<section id=\"{}\" hidden></section>\n", id);
}

namespace {

Html heading_html(const render::ReportHeading& heading, const std::string& prefix) {
    render::HtmlBlocks facts(prefix + "-");
    if (!heading.facts.empty()) facts.write_heading_facts(heading.facts);
    return html("<header class=\"head\" id=\"{}-heading\"><h1>{}</h1>\n{}</header>\n", prefix, heading.title,
                Html::rendered(facts.taken()));
}

Html part_html(const std::string& id, const render::ReportSection& section) {
    return html("<h2 class=\"part\" id=\"{}\">{} <small class=\"quiet\">{}</small></h2>\n", id, section.title,
                section.aside);
}

}  // namespace

Html report_html(const render::Report& report, const std::string& prefix) {
    Html result;
    if (report.heading) result += heading_html(*report.heading, prefix);
    std::size_t number = 0;
    for (const render::ReportSection& section : report.sections) {
        const std::string id = section.id.empty() ? prefix + "-" + std::to_string(++number) : prefix + "-" + section.id;
        if (section.kind == render::ReportSection::Kind::part) result += part_html(id, section);
        const Html blocks = blocks_html(section, prefix);
        if (blocks.is_empty()) continue;
        if (section.title.empty() || section.kind == render::ReportSection::Kind::part)
            result += html("<div class=\"panel\">\n{}</div>\n", blocks);
        else
            result += panel(id, section.title, Html(), blocks);
    }
    return html("<div class=\"stack\">\n{}</div>\n", result);
}

}  // namespace flutebook::pages
