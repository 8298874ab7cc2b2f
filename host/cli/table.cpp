#include "host/cli/table.hpp"

#include <algorithm>
#include <numeric>

#include "host/cli/text.hpp"

namespace flutebook::cli {

namespace {

constexpr std::size_t gap = 2;
constexpr std::size_t least_flexible = 8;
constexpr char stroke_mark = '-';

bool is_number(const std::string& cell) {
    return !cell.empty() && cell.find_first_of("0123456789") != std::string::npos &&
           cell.find_first_not_of("0123456789 .-+e") == std::string::npos;
}

// From the point on.
std::size_t tail_of(const std::string& cell) {
    const std::size_t point = cell.find('.');
    return point == std::string::npos ? 0 : cell.size() - point;
}

std::size_t total(const std::vector<std::size_t>& widths, std::size_t indent) {
    return std::accumulate(widths.begin(), widths.end(), indent) + gap * (widths.size() - 1);
}

void give_way(std::vector<std::size_t>& widths, const std::vector<Align>& columns, std::size_t indent) {
    while (total(widths, indent) > page_width) {
        std::size_t widest = widths.size();
        for (std::size_t c = 0; c < widths.size(); ++c)
            if (columns[c] == Align::flexible && widths[c] > least_flexible &&
                (widest == widths.size() || widths[c] > widths[widest]))
                widest = c;
        if (widest == widths.size()) return;
        --widths[widest];
    }
}

std::string placed(const std::string& cell, std::size_t width, Align align) {
    const std::string shown = align == Align::flexible ? cut(cell, width) : cell;
    const std::size_t taken = width_of(shown);
    const std::string space(width > taken ? width - taken : 0, ' ');
    return align == Align::right || align == Align::decimal ? space + shown : shown + space;
}

}  // namespace

void Table::add(std::vector<std::string> cells) {
    cells.resize(columns_.size());
    for (std::string& cell : cells) cell = cleaned(cell);
    rows_.push_back({Row::Kind::cells, std::move(cells)});
}

void Table::stroke(std::vector<std::size_t> columns) {
    std::vector<std::string> cells(columns_.size());
    for (const std::size_t column : columns) cells[column].assign(1, stroke_mark);
    rows_.push_back({Row::Kind::stroke, std::move(cells)});
}

void Table::say(const std::string& text) {
    rows_.push_back({Row::Kind::words, {cleaned(text)}});
}

std::string Table::text() const {
    std::vector<Row> rows = rows_;
    std::vector<std::size_t> widths(columns_.size());
    for (std::size_t c = 0; c < columns_.size(); ++c) {
        std::size_t tail = 0;
        for (const Row& row : rows)
            if (row.kind == Row::Kind::cells && is_number(row.cells[c])) tail = std::max(tail, tail_of(row.cells[c]));
        for (Row& row : rows) {
            if (row.kind != Row::Kind::cells) continue;
            if (columns_[c] == Align::decimal && is_number(row.cells[c]))
                row.cells[c].append(tail - tail_of(row.cells[c]), ' ');
            widths[c] = std::max(widths[c], width_of(row.cells[c]));
        }
    }
    give_way(widths, columns_, indent_);

    std::string made;
    for (const Row& row : rows) {
        std::string line(indent_, ' ');
        if (row.kind == Row::Kind::words) line += row.cells[0];
        for (std::size_t c = 0; row.kind != Row::Kind::words && c < columns_.size(); ++c) {
            const bool is_stroke = row.kind == Row::Kind::stroke && !row.cells[c].empty();
            if (c != 0) line.append(gap, ' ');
            line += is_stroke ? std::string(widths[c], stroke_mark) : placed(row.cells[c], widths[c], columns_[c]);
        }
        line.erase(line.find_last_not_of(' ') + 1);
        line += '\n';
        made += line;
    }
    return made;
}

}  // namespace flutebook::cli
