// Every text of a report is escaped by shown_html() or markup_text(); everything else is a literal of this file.
#include "host/render/html_report.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "host/render/escaping.hpp"
#include "host/render/html_blocks.hpp"
#include "host/render/svg_style.hpp"

namespace flutebook::render {

namespace {

// The page, its tables, narrow screens and paper.
constexpr const char* style = R"(
* { box-sizing: border-box; }
html { background: var(--sheet); -webkit-text-size-adjust: 100%; }
body { margin: 0; color: var(--ink);
  font: 400 13.5px/1.42 -apple-system, "Segoe UI", "Liberation Sans", Arial, sans-serif;
  font-variant-numeric: tabular-nums lining-nums; overflow-wrap: break-word; }
h1, h2, h3, p, dl, dd, pre { margin: 0; padding: 0; }
h1 { font-size: 19px; font-weight: 600; letter-spacing: -.005em; line-height: 1.25; }
h2 { font-size: 15px; font-weight: 650; line-height: 1.3; }
h3 { font-size: 13.5px; font-weight: 650; }
a { color: inherit; text-decoration: none; border-bottom: 1px dotted var(--ink-3); }
a:hover { color: var(--accent); border-color: var(--accent); }
:focus-visible { outline: 2px solid var(--accent); outline-offset: 1px; }
main { max-width: 780px; margin: 0 auto; padding: 30px 16px; }
.back { max-width: 780px; margin: 0 auto; padding: 12px 16px 0; }
article + article { margin-top: 48px; border-top: 3px double var(--line-2); padding-top: 24px; }
.line { display: flex; justify-content: space-between; align-items: baseline; gap: 4px 24px; flex-wrap: wrap; }
.line span { color: var(--ink-2); }
article > header { margin-bottom: 16px; }
.facts { display: flex; flex-wrap: wrap; gap: 6px 28px; margin-top: 10px; }
.facts dt, .list dt { color: var(--ink-3); font-size: 11.5px; }
.facts div { min-width: 0; }
.list { display: grid; grid-template-columns: fit-content(16em) minmax(0, 1fr); gap: 2px 16px; margin: 6px 0; }
.list dt { padding-top: 1.5px; }
section { border-top: 1px solid var(--line-2); padding: 10px 0 16px; }
.part { border-top: 2px solid var(--accent); padding-bottom: 0; margin-top: 20px; }
.part > .line { padding-bottom: 10px; }
.part section { border-top-color: var(--line); }
h2 + *, h3 + * { margin-top: 6px; }
p { max-width: 66em; margin: 6px 0; }
.warning { color: var(--warn); background: var(--warn-wash); padding: 3px 8px; }
.l1 { margin-left: 1.2em; } .l2 { margin-left: 2.4em; } .l3 { margin-left: 3.6em; } .l4 { margin-left: 4.8em; }
.l5 { margin-left: 6em; } .l6 { margin-left: 7.2em; }
pre, code { font: 12px/1.45 ui-monospace, "Liberation Mono", Menlo, monospace; }
pre { background: var(--well); padding: 8px 12px; overflow-x: auto; }
.scroll { overflow-x: auto; margin: 6px 0; }
.scroll + .scroll { margin-top: 16px; }
table { border-collapse: collapse; width: 100%; }
th { font-weight: 500; font-size: 11.5px; color: var(--ink-3); text-align: left; vertical-align: bottom;
  padding: 0 12px 4px 0; border-bottom: 1px solid var(--line-2); }
td, tbody th { padding: 1.5px 12px 1.5px 0; border-bottom: 1px solid var(--line); vertical-align: baseline; }
thead td { border-bottom-color: var(--line-2); }
tbody th { font-size: inherit; color: inherit; font-weight: 400; }
.num { text-align: right; white-space: nowrap; padding-right: 0; padding-left: 12px; }
thead .num { white-space: normal; }
.num + .text, .num + .name, .num + .sentence { padding-left: 20px; }
.text { white-space: nowrap; }
.group th::first-letter, dt::first-letter { text-transform: uppercase; }
td.text, td.name, td.sentence { color: var(--ink-2); }
.unit { color: var(--ink-3); font-size: .88em; }
.group th { padding-top: 10px; font-weight: 650; border-bottom-color: var(--line-2); }
.subtotal th, .subtotal td { font-weight: 650; border-top: 1px solid var(--line-2); }
.total th, .total td { font-weight: 650; border-top: 1px solid var(--ink-3);
  border-bottom: 3px double var(--line-2); }
td.strong { font-weight: 650; font-size: 15px; background: var(--accent-wash); }
th.strong { color: var(--ink); font-weight: 650; background: var(--accent-wash);
  box-shadow: inset 0 2px 0 var(--accent); }
.num.strong { padding-right: 8px; border-left: 10px solid var(--sheet); background-clip: padding-box; }
.said td { border: 0; padding-left: 16px; color: var(--ink-2); }
.d1 { padding-left: 1em; } .d2 { padding-left: 2em; } .d3 { padding-left: 3em; }
.drawings { display: flex; flex-wrap: wrap; gap: 14px 4px; margin: 10px 0; align-items: flex-start; }
figure { margin: 0; min-width: 0; max-width: 372px; break-inside: avoid; }
figcaption { color: var(--ink-2); font-size: 11.5px; margin: 0 6px 2px; }
figcaption b { color: var(--ink); font-weight: 650; }
@media (max-width: 700px) { main { padding: 16px 12px; } .back { padding: 12px 12px 0; } .facts { gap: 6px 20px; }
  .list { grid-template-columns: minmax(0, 1fr); } .list dd { margin-bottom: 4px; }
  table { font-size: 12px; } th { font-size: 10.5px; }
  td, tbody th { padding-right: 6px; } tbody th { font-size: 12px; } tbody th.name { min-width: 6em; }
  .num { padding-right: 0; padding-left: 6px; }
  .num + .text, .num + .name, .num + .sentence { padding-left: 10px; } .d1 { padding-left: .6em; }
  .num.strong { padding-right: 4px; border-left-width: 4px; } td.strong { font-size: 13px; } }
@media print {
  main { max-width: none; padding: 0; } .back { display: none; } body { font-size: 8.6pt; } .scroll { overflow: visible; }
  tr { break-inside: avoid; } thead { display: table-header-group; } h1, h2, h3, .group { break-after: avoid; }
  .part + .part, article + article { break-before: page; }
  * { print-color-adjust: exact; -webkit-print-color-adjust: exact; } }
@page { margin: 13mm 12mm 14mm; @bottom-right { content: counter(page) " / " counter(pages); font: 8pt sans-serif; } }
)";

// The house's own words, whatever language the sheet speaks.
std::string way_back(const PageLook::WayBack& back) {
    if (back.address.empty()) return "";
    return fmt::format("<nav class=\"back\" lang=\"en\" aria-label=\"Back\"><a href=\"{}\">{}</a></nav>\n",
                       markup_text(back.address), shown_html(back.text));
}

// One report; sections that follow a part stand in it.
class HtmlWriter {
public:
    HtmlWriter(const Report& report, std::size_t number)
        : report_(report), prefix_(fmt::format("r{}-", number)), blocks_(prefix_) {}

    std::string text() {
        text_ = "<article>\n";
        if (report_.heading) write_heading(*report_.heading);
        for (const ReportSection& section : report_.sections) write_section(section);
        if (is_in_part_) text_ += "</section>\n";
        return text_ + "</article>\n";
    }

private:
    void write_heading(const ReportHeading& heading) {
        text_ += "<header>\n" + title_line("h1", heading.title, heading.aside);
        if (!heading.facts.empty()) {
            blocks_.write_heading_facts(heading.facts);
            text_ += blocks_.taken();
        }
        text_ += "</header>\n";
    }

    static std::string title_line(const char* tag, const std::string& title, const std::string& aside) {
        const std::string head = fmt::format("<{0}>{1}</{0}>", tag, shown_html(title));
        return aside.empty() ? head + '\n'
                             : fmt::format("<div class=\"line\">{}<span>{}</span></div>\n", head, shown_html(aside));
    }

    std::string id_attribute(const std::string& id) const {
        return id.empty() ? "" : fmt::format(" id=\"{}{}\"", prefix_, markup_text(id));
    }

    void write_section(const ReportSection& section) {
        const bool is_part = section.kind == ReportSection::Kind::part;
        if (is_part && is_in_part_) text_ += "</section>\n";
        text_ += fmt::format("<section{}{}>\n", is_part ? " class=\"part\"" : "", id_attribute(section.id));
        const char* tag = is_in_part_ && !is_part ? "h3" : "h2";
        if (!section.title.empty()) text_ += title_line(tag, section.title, is_part ? section.aside : "");
        for (const Block& block : section.blocks) std::visit([this](const auto& item) { blocks_.write(item); }, block);
        text_ += blocks_.taken();
        if (!is_part) text_ += "</section>\n";
        is_in_part_ = is_in_part_ || is_part;
    }

    const Report& report_;
    std::string prefix_;  // of ids, so that two reports in one file have none in common
    HtmlBlocks blocks_;
    std::string text_;
    bool is_in_part_ = false;
};

bool draws_losses(const Report& report) {
    for (const ReportSection& section : report.sections)
        for (const Block& block : section.blocks)
            if (const auto* drawings = std::get_if<Drawings>(&block))
                for (const Drawing& drawing : drawings->items)
                    for (const DrawnPolygon& polygon : drawing.polygons)
                        if (polygon.kind == DrawnPolygon::Kind::lost) return true;
    return false;
}

const char* page_size(PageLook::Size size) {
    switch (size) {
        case PageLook::Size::a4:
            return "@page { size: A4; }\n";
        case PageLook::Size::letter:
            return "@page { size: letter; }\n";
        case PageLook::Size::any:
            break;
    }
    return "";
}

std::string document_title(const std::vector<Report>& reports) {
    std::string result;
    for (const Report& report : reports) {
        if (!result.empty()) return fmt::format("{} and {} more", result, reports.size() - 1);
        result = report.heading ? report.heading->title : report.name;
    }
    return result;
}

}  // namespace

std::string to_html(const std::vector<Report>& reports, const PageLook& look) {
    const bool has_losses = std::any_of(reports.begin(), reports.end(), draws_losses);
    std::string result = fmt::format(
        "<!doctype html>\n<html lang=\"{}\"><head><meta charset=\"utf-8\"><meta name=\"viewport\" "
        "content=\"width=device-width, initial-scale=1\"><meta http-equiv=\"Content-Security-Policy\" "
        "content=\"default-src 'none'; style-src "
        "'unsafe-inline'\"><title>{}</title><style>{}{}{}{}{}</style></head><body>\n"
        "{}<main>\n",
        shown_html(look.language), shown_html(look.title.empty() ? document_title(reports) : look.title), colours(),
        drawing_style(), has_losses ? loss_style() : "", style, page_size(look.size), way_back(look.back));
    for (std::size_t i = 0; i < reports.size(); ++i) result += HtmlWriter(reports[i], i).text();
    return result + "</main></body></html>\n";
}

}  // namespace flutebook::render
