// In Markdown titles are headings, tables are tables between bars, facts are a list. In CSV a cell's type says what is
// text and what is a number; its look is never used to guess.
#include "host/render/text_exports.hpp"

#include <fmt/format.h>

#include "host/render/escaping.hpp"

namespace flutebook::render {

namespace {

std::string cell_markdown(const Cell& cell) {
    if (const auto* code = std::get_if<Code>(&cell.value)) return code->text.empty() ? "" : markdown_code(code->text);
    return markdown_text(whole_text(cell));
}

std::string bold(const std::string& text) {
    return text.empty() ? "" : "**" + text + "**";
}

std::string row_markdown(const TableRow& row) {
    std::string result = "|";
    for (const Cell& cell : row.cells) {
        const std::string text = cell_markdown(cell);
        result += ' ' + (row.kind == TableRow::Kind::item ? text : bold(text)) + " |";
    }
    return result + '\n';
}

struct ToMarkdown {
    std::string operator()(const Note& note) const {
        switch (note.kind) {
            case Note::Kind::code:
                return "```\n" + note.text + (note.text.empty() || note.text.back() != '\n' ? "\n" : "") + "```\n";
            case Note::Kind::item:
                return "- " + markdown_text(note.text) + '\n';
            case Note::Kind::warning:
                return bold(markdown_text(note.text)) + '\n';
            case Note::Kind::sentence:
                break;
        }
        return markdown_text(note.text) + '\n';
    }

    std::string operator()(const Facts& facts) const {
        std::string result;
        for (const LabelledText& fact : facts) {
            std::string items;
            for (const std::string& item : fact.items) items += (items.empty() ? "" : ", ") + markdown_text(item);
            result += "- " + markdown_text(fact.label) + ": " + items + '\n';
        }
        return result;
    }

    std::string operator()(const ReportTable& whole) const {
        if (whole.rows.empty()) return "";
        const ReportTable table = page_table(whole);
        std::string heads = "|", strokes = "|", rows, notes;
        for (const TableColumn& column : table.columns) {
            heads += ' ' + markdown_text(column.head()) + " |";
            strokes += column.kind == TableColumn::Kind::number ? "---:|" : "---|";
        }
        for (const TableRow& row : table.rows) {
            rows += row_markdown(row);
            for (const Note& note : row.notes) notes += "- " + markdown_text(note.text) + '\n';
        }
        return heads + '\n' + strokes + '\n' + rows + (notes.empty() ? "" : "\n" + notes);
    }

    std::string operator()(const Drawings&) const { return ""; }
};

bool is_item(const Block& block) {
    const auto* note = std::get_if<Note>(&block);
    return note != nullptr && note->kind == Note::Kind::item;
}

std::string section_markdown(const ReportSection& section) {
    std::string result;
    const bool is_part = section.kind == ReportSection::Kind::part;
    if (!section.title.empty()) result += (is_part ? "\n# " : "\n## ") + markdown_text(section.title) + '\n';
    bool follows_item = false;
    for (const Block& block : section.blocks) {
        const std::string text = std::visit(ToMarkdown{}, block);
        if (text.empty()) continue;
        if (!(follows_item && is_item(block))) result += '\n';
        result += text;
        follows_item = is_item(block);
    }
    return result;
}

std::string value_text(const Cell& cell) {
    const auto number = raw_number(cell);
    return number ? fmt::format("{}", *number) : csv_cell(whole_text(cell));
}

std::string table_csv(const std::string& report, const ReportTable& table) {
    std::string result;
    const std::vector<std::string> names = row_names(table);
    for (std::size_t r = 0; r < table.rows.size(); ++r) {
        const TableRow& row = table.rows[r];
        for (std::size_t c = 1; c < row.cells.size() && c < table.columns.size(); ++c)
            if (!is_empty(row.cells[c]))
                result += fmt::format("{},{},{},{},{}\r\n", report, csv_cell(table.name), csv_cell(names[r]),
                                      csv_cell(table.columns[c].head()), value_text(row.cells[c]));
    }
    return result;
}

}  // namespace

std::string to_markdown(const Report& report) {
    std::string result;
    if (report.heading) {
        result = "# " + markdown_text(report.heading->title) + '\n';
        if (!report.heading->facts.empty()) result += '\n' + ToMarkdown{}(report.heading->facts);
    }
    for (const ReportSection& section : report.sections) result += section_markdown(section);
    return result;
}

std::string to_csv(const Report& report) {
    std::string result = csv_cell(report.kind) + ",\"table\",\"row\",\"column\",\"value\"\r\n";
    for (const ReportSection& section : report.sections)
        for (const Block& block : section.blocks)
            if (const auto* table = std::get_if<ReportTable>(&block))
                result += table_csv(csv_cell(report.name), *table);
    return result;
}

}  // namespace flutebook::render
