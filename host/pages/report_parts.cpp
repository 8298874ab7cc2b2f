#include "host/pages/report_parts.hpp"

#include <utility>

#include "host/pages/place_links.hpp"

namespace flutebook::pages {

Html blocks_html(const render::ReportSection& section, const std::string& prefix, const render::FigureWalk* walk) {
    render::HtmlBlocks blocks(prefix + "-", walk);
    for (const render::Block& block : section.blocks) std::visit([&](const auto& item) { blocks.write(item); }, block);
    return Html::rendered(blocks.taken());
}

render::ReportSection without_folder(render::ReportSection section, const std::string& folder) {
    for (render::Block& block : section.blocks)
        if (auto* note = std::get_if<render::Note>(&block))
            note->text = without_folder_names(std::move(note->text), folder);
    return section;
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

namespace {

// Titles of sections repeat from part to part, so these are no landmarks.
class ReportWriter {
public:
    ReportWriter(const std::string& prefix, const render::FigureWalk* walk)
        : prefix_(prefix), writer_(prefix + "-", walk) {}

    Html text(const render::Report& report) {
        Html result;
        if (report.heading) result += heading_html(*report.heading, prefix_);
        for (const render::ReportSection& section : report.sections) result += section_html(section);
        return result;
    }

private:
    Html section_html(const render::ReportSection& section) {
        const bool is_part = section.kind == render::ReportSection::Kind::part;
        const std::string id = prefix_ + "-" + (section.id.empty() ? std::to_string(++number_) : section.id);
        const Html head = is_part ? part_html(id, section) : Html();
        is_in_part_ = is_in_part_ || is_part;
        for (const render::Block& block : section.blocks)
            std::visit([&](const auto& item) { writer_.write(item); }, block);
        const Html blocks = Html::rendered(writer_.taken());
        if (blocks.is_empty()) return head;
        if (is_part || section.title.empty()) return head + html("<div class=\"panel\">\n{}</div>\n", blocks);
        const Html title = is_in_part_ ? html("<h3>{}</h3>", section.title) : html("<h2>{}</h2>", section.title);
        return html("<div class=\"panel\" id=\"{}\"><header>{}</header>\n{}</div>\n", id, title, blocks);
    }

    std::string prefix_;
    render::HtmlBlocks writer_;  // one for all, so that no two drawings share an id
    std::size_t number_ = 0;     // of sections without an id
    bool is_in_part_ = false;
};

}  // namespace

Html report_html(const render::Report& report, const std::string& prefix, const render::FigureWalk* walk) {
    return html("<div class=\"stack\">\n{}</div>\n", ReportWriter(prefix, walk).text(report));
}

}  // namespace flutebook::pages
