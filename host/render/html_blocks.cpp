// Every text of a report is escaped by shown_html() or markup_text(); everything else is a literal of this file.
#include "host/render/html_blocks.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "host/render/escaping.hpp"
#include "host/render/svg.hpp"
#include "host/render/text.hpp"

namespace flutebook::render {

namespace {

// Line ends stay.
std::string lines_html(const std::string& text) {
    std::string result;
    for (std::size_t at = 0; at <= text.size();) {
        const std::size_t end = std::min(text.find('\n', at), text.size());
        result += (at == 0 ? "" : "\n") + shown_html(text.substr(at, end - at));
        at = end + 1;
    }
    return result;
}

std::string level_class(char letter, std::size_t level, std::size_t deepest) {
    return level == 0 ? "" : fmt::format("{}{}", letter, std::min(level, deepest));
}

std::string class_attribute(const std::string& names) {
    return names.empty() ? "" : fmt::format(" class=\"{}\"", names);
}

std::string added(std::string names, const std::string& name) {
    if (!names.empty() && !name.empty()) names += ' ';
    return names + name;
}

std::string with_unit(const std::string& text, const std::string& unit) {
    if (unit.empty()) return shown_html(text);
    return fmt::format("{}{}<span class=\"unit\">{}</span>", shown_html(text), text.empty() ? "" : " ",
                       shown_html(unit));
}

std::string column_class(const TableColumn& column) {
    std::string result;
    switch (column.kind) {
        case TableColumn::Kind::number:
            result = "num";
            break;
        case TableColumn::Kind::text:
            result = "text";
            break;
        case TableColumn::Kind::name:
            result = "name";
            break;
        case TableColumn::Kind::sentence:
            result = "sentence";
            break;
    }
    return added(std::move(result), column.weight == TableColumn::Weight::strong ? "strong" : "");
}

std::string row_class(TableRow::Kind kind) {
    switch (kind) {
        case TableRow::Kind::group:
            return " class=\"group\"";
        case TableRow::Kind::subtotal:
            return " class=\"subtotal\"";
        case TableRow::Kind::total:
            return " class=\"total\"";
        case TableRow::Kind::item:
            break;
    }
    return "";
}

std::string facts_html(const char* kind, const Facts& facts) {
    const bool is_grid = kind == std::string("list");
    std::string result = fmt::format("<dl class=\"{}\">\n", kind);
    for (const LabelledText& fact : facts) {
        std::string items;
        for (const std::string& item : fact.items) items += (items.empty() ? "" : ", ") + item;
        const std::string pair = fmt::format("<dt>{}</dt><dd>{}</dd>", shown_html(fact.label), shown_html(items));
        result += is_grid ? pair + '\n' : "<div>" + pair + "</div>\n";
    }
    return result + "</dl>\n";
}

// "machines.yaml:12:40" within a text.
struct NamedPlace {
    std::string_view file = {};
    int line = 0;
    std::size_t end = 0;  // past it; 0: there is none
};

std::size_t past_digits(const std::string& text, std::size_t at) {
    constexpr std::size_t most_digits = 7;
    const std::size_t begin = at;
    while (at < text.size() && at - begin < most_digits && text[at] >= '0' && text[at] <= '9') ++at;
    return at;
}

// The first that ends after `from`.
NamedPlace place_after(const std::string& text, std::size_t from) {
    constexpr std::string_view ending = ".yaml:", before_name = " \t\"'(,;:";
    for (std::size_t dot = text.find(ending, from); dot != std::string::npos; dot = text.find(ending, dot + 1)) {
        const std::size_t line = dot + ending.size();
        std::size_t end = past_digits(text, line);
        if (end == line) continue;
        const std::size_t before = text.find_last_of(before_name, dot);
        const std::size_t begin = std::max(from, before == std::string::npos ? 0 : before + 1);
        NamedPlace named;
        named.file = std::string_view(text).substr(begin, line - 1 - begin);
        named.line = std::stoi(text.substr(line, end - line));
        const std::size_t column = end + 1;
        if (end < text.size() && text[end] == ':' && past_digits(text, column) > column)
            end = past_digits(text, column);
        named.end = end;
        return named;
    }
    return {};
}

}  // namespace

std::string shown_html(const std::string& text) {
    return markup_text(cleaned(text));
}

void HtmlBlocks::write(const Note& note) {
    if (note.kind == Note::Kind::code) {
        text_ += "<pre>" + lines_html(note.text) + "</pre>\n";
        return;
    }
    const std::string kind = note.kind == Note::Kind::warning ? "warning" : "";
    text_ += fmt::format("<p{}>{}</p>\n", class_attribute(added(kind, level_class('l', note.level, 6))),
                         told_html(note.text, walk_));
}

void HtmlBlocks::write(const Facts& facts) {
    text_ += facts_html("list", facts);
}

void HtmlBlocks::write_heading_facts(const Facts& facts) {
    text_ += facts_html("facts", facts);
}

void HtmlBlocks::write(const ReportTable& whole) {
    if (whole.rows.empty()) return;
    const ReportTable table = page_table(whole);
    // A table that is wider than the screen scrolls on its own, also by the keyboard.
    text_ += fmt::format("<div class=\"scroll\" role=\"group\" tabindex=\"0\" aria-label=\"{}\"><table>\n",
                         shown_html(table.name));
    write_heads(table);
    text_ += "<tbody>\n";
    for (const TableRow& row : table.rows) write_row(table, row);
    text_ += "</tbody></table></div>\n";
}

void HtmlBlocks::write(const Drawings& drawings) {
    if (drawings.items.empty()) return;
    text_ += "<div class=\"drawings\">\n";
    for (const Drawing& drawing : drawings.items)
        text_ += fmt::format("<figure><figcaption><b>{}</b>{}{}</figcaption>\n{}</figure>\n", shown_html(drawing.title),
                             drawing.note.empty() ? "" : "<br>", shown_html(drawing.note),
                             svg_in_page(drawing, fmt::format("{}d{}-", prefix_, drawn_++)));
    text_ += "</div>\n";
}

void HtmlBlocks::write_heads(const ReportTable& table) {
    std::string heads;
    bool has_one = false;
    for (const TableColumn& column : table.columns) {
        const std::string head = with_unit(column.title, column.unit);
        const std::string classes = class_attribute(column_class(column));
        heads += head.empty() ? fmt::format("<td{}></td>", classes)
                              : fmt::format("<th scope=\"col\"{}>{}</th>", classes, head);
        has_one = has_one || !head.empty();
    }
    if (has_one) text_ += "<thead><tr>" + heads + "</tr></thead>\n";
}

void HtmlBlocks::write_row(const ReportTable& table, const TableRow& row) {
    text_ += fmt::format("<tr{}>", row_class(row.kind));
    if (row.kind == TableRow::Kind::group)
        text_ += fmt::format("<th scope=\"rowgroup\" colspan=\"{}\">{}</th>", table.columns.size(),
                             cell_html(row.cells.at(0)));
    for (std::size_t c = 0; row.kind != TableRow::Kind::group && c < table.columns.size(); ++c)
        write_cell(table.columns[c], row, c);
    text_ += "</tr>\n";
    for (const Note& note : row.notes)
        text_ += fmt::format("<tr class=\"said\"><td colspan=\"{}\">{}</td></tr>\n", table.columns.size(),
                             told_html(note.text, walk_));
    write_opened(table, row);
}

void HtmlBlocks::write_cell(const TableColumn& column, const TableRow& row, std::size_t c) {
    const std::string classes = added(column_class(column), c == 0 ? level_class('d', row.level, 3) : "");
    std::string inner = cell_html(row.cells[c]);
    // A name that is not repeated is no head of its row.
    const bool is_head = c == 0 && !inner.empty();
    const char* tag = is_head ? "th" : "td";
    const bool is_figure = c == 0 && walk_ != nullptr && !row.figure.empty() && !inner.empty();
    const std::string address = is_figure ? walk_->address(row.figure) : "";
    if (!address.empty())
        inner = fmt::format("<a class=\"walk\" id=\"{}walk-{}\" href=\"{}\">{}</a>", prefix_, markup_text(row.figure),
                            markup_text(address), inner);
    text_ += fmt::format("<{0}{1}{2}>{3}</{0}>", tag, is_head ? " scope=\"row\"" : "", class_attribute(classes), inner);
}

// Once, below the row that names the figure: rows that repeat it have no name on a page.
void HtmlBlocks::write_opened(const ReportTable& table, const TableRow& row) {
    if (walk_ == nullptr || row.figure.empty() || is_empty(row.cells.at(0))) return;
    const std::string opened = walk_->opened(row.figure);
    if (!opened.empty())
        text_ += fmt::format("<tr class=\"opened\"><td colspan=\"{}\">{}</td></tr>\n", table.columns.size(), opened);
}

std::string HtmlBlocks::cell_html(const Cell& cell) const {
    if (const auto* code = std::get_if<Code>(&cell.value))
        return code->text.empty() ? "" : "<code>" + shown_html(code->text) + "</code>";
    if (const auto* words = std::get_if<std::string>(&cell.value); words != nullptr && cell.link.empty())
        return told_html(*words, walk_);
    const CellText words = cell_text(cell);
    const std::string inner = with_unit(words.text, words.unit);
    if (cell.link.empty()) return inner;
    return fmt::format("<a href=\"#{}{}\">{}</a>", prefix_, markup_text(cell.link), inner);
}

std::string told_html(const std::string& given, const FigureWalk* walk) {
    if (walk == nullptr) return shown_html(given);
    const std::string text = walk->said(given);
    std::string result;
    std::size_t written = 0;
    for (NamedPlace named = place_after(text, 0); named.end > 0; named = place_after(text, named.end)) {
        const std::string address = walk->place(named.file, named.line);
        if (address.empty()) continue;
        const std::size_t begin = static_cast<std::size_t>(named.file.data() - text.data());
        result += shown_html(text.substr(written, begin - written));
        result += fmt::format("<a class=\"place\" href=\"{}\">{}</a>", markup_text(address),
                              shown_html(text.substr(begin, named.end - begin)));
        written = named.end;
    }
    return result + shown_html(text.substr(written));
}

}  // namespace flutebook::render
