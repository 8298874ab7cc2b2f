// An empty line stands between sections; the title of a part stands between two rules.
#include "host/render/text_report.hpp"

#include <algorithm>

#include "host/render/text.hpp"
#include "host/render/text_table.hpp"

namespace flutebook::render {

namespace {

constexpr std::size_t widest_label = 12;  // above it each text stands behind its own label

std::string joined(const std::vector<std::string>& items) {
    std::string result;
    for (const std::string& item : items) result += (result.empty() ? "" : ", ") + cleaned(item);
    return result;
}

std::string facts_text(const Facts& facts, std::size_t width) {
    std::size_t widest = 0;
    for (const LabelledText& fact : facts) widest = std::max(widest, width_of(fact.label));
    std::string result;
    for (const LabelledText& fact : facts) {
        const std::string label = cleaned(fact.label);
        const std::size_t space = widest > widest_label ? 1 : widest - width_of(label) + 2;
        const std::string first = "  " + label + std::string(space, ' ');
        result +=
            fact.items.size() == 1 ? hanging(first, cleaned(fact.items[0]), width) : hanging(first, fact.items, width);
    }
    return result;
}

// As many facts to a line as fit: a label is not parted from its text, unless the two are longer than a line.
std::string facts_in_lines(const Facts& facts, std::size_t width) {
    std::string result, line;
    for (std::size_t i = 0; i < facts.size(); ++i) {
        const std::string fact =
            cleaned(facts[i].label) + ' ' + joined(facts[i].items) + (i + 1 < facts.size() ? ";" : "");
        if (!line.empty() && width_of(line) + 1 + width_of(fact) > width) {
            result += hanging("", line, width);
            line.clear();
        }
        line += (line.empty() ? "" : " ") + fact;
    }
    return line.empty() ? result : result + hanging("", line, width);
}

std::string heading_text(const ReportHeading& heading, std::size_t width) {
    return rule('=', width) + edges(cleaned(heading.title), cleaned(heading.aside), width) +
           facts_in_lines(heading.facts, width) + rule('=', width);
}

struct BlockText {
    std::size_t width;

    std::string operator()(const Note& note) const { return note_text(note, 0, width); }
    std::string operator()(const Facts& facts) const { return facts_text(facts, width); }
    std::string operator()(const ReportTable& table) const { return table_text(table, width); }
    std::string operator()(const Drawings&) const { return ""; }
};

std::string section_text(const ReportSection& section, std::size_t width) {
    std::string result;
    if (section.kind == ReportSection::Kind::part)
        result = rule('-', width) + edges(cleaned(section.title), cleaned(section.aside), width) + rule('-', width);
    else if (!section.title.empty())
        result = hanging("", cleaned(section.title), width);
    bool follows_table = false;
    for (const Block& block : section.blocks) {
        const std::string text = std::visit(BlockText{width}, block);
        if (text.empty()) continue;
        const bool is_table = std::holds_alternative<ReportTable>(block);
        if (follows_table && is_table) result += '\n';
        result += text;
        follows_table = is_table;
    }
    return result;
}

}  // namespace

std::string to_text(const Report& report, std::size_t width) {
    std::string result = report.heading ? heading_text(*report.heading, width) : "";
    bool follows_part = false;
    for (const ReportSection& section : report.sections) {
        if (!result.empty() && !follows_part) result += '\n';
        result += section_text(section, width);
        follows_part = section.kind == ReportSection::Kind::part && section.blocks.empty();
    }
    return result;
}

}  // namespace flutebook::render
