#include "host/render/table.hpp"

#include <algorithm>

#include "host/render/text.hpp"

namespace flutebook::render {

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

// Of the first `columns` columns, with the gaps between them.
std::size_t room_of(const std::vector<std::size_t>& widths, std::size_t columns) {
    std::size_t room = gap * (columns - 1);
    for (std::size_t c = 0; c < columns && c < widths.size(); ++c) room += widths[c];
    return room;
}

void give_way(std::vector<std::size_t>& widths, const std::vector<Align>& columns, std::size_t indent) {
    while (indent + room_of(widths, widths.size()) > page_width) {
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
    rows_.push_back({TableRow::Kind::cells, std::move(cells)});
}

void Table::stroke(const std::vector<std::size_t>& columns) {
    std::vector<std::string> cells(columns_.size());
    for (const std::size_t column : columns) cells[column].assign(1, stroke_mark);
    rows_.push_back({TableRow::Kind::stroke, std::move(cells)});
}

void Table::say(const std::string& text) {
    rows_.push_back({TableRow::Kind::words, {cleaned(text)}});
}

std::string Table::text() const {
    std::vector<TableRow> rows = rows_;
    for (std::size_t c = 0; c < columns_.size(); ++c)
        if (columns_[c] == Align::decimal) line_up_points(rows, c);
    std::vector<std::size_t> widths = widths_of(rows, RunOn::never);
    if (indent_ + room_of(widths, widths.size()) > page_width) widths = widths_of(rows, RunOn::over_empty_cells);
    give_way(widths, columns_, indent_);

    std::string result;
    for (const TableRow& row : rows) {
        std::string line(indent_, ' ');
        line += row.kind == TableRow::Kind::words ? row.cells[0] : line_of(row, widths);
        line.erase(line.find_last_not_of(' ') + 1);
        line += '\n';
        result += line;
    }
    return result;
}

std::vector<std::size_t> Table::widths_of(const std::vector<TableRow>& rows, RunOn run_on) const {
    std::vector<std::size_t> widths(columns_.size());
    const auto taken = [&](const TableRow& row) { return run_on == RunOn::never ? 1 : reach(row); };
    for (const TableRow& row : rows)
        for (std::size_t c = 0; row.kind == TableRow::Kind::cells && c < columns_.size(); ++c)
            if (c > 0 || taken(row) == 1) widths[c] = std::max(widths[c], width_of(row.cells[c]));
    for (const TableRow& row : rows) {
        const std::size_t room = room_of(widths, taken(row));
        if (row.kind == TableRow::Kind::cells && width_of(row.cells[0]) > room)
            widths[0] += width_of(row.cells[0]) - room;
    }
    return widths;
}

// Numbers get spaces behind them, as many as the longest tail is longer.
void Table::line_up_points(std::vector<TableRow>& rows, std::size_t column) {
    std::size_t tail = 0;
    for (const TableRow& row : rows)
        if (row.kind == TableRow::Kind::cells && is_number(row.cells[column]))
            tail = std::max(tail, tail_of(row.cells[column]));
    for (TableRow& row : rows)
        if (row.kind == TableRow::Kind::cells && is_number(row.cells[column]))
            row.cells[column].append(tail - tail_of(row.cells[column]), ' ');
}

// How many columns the first cell may take: it runs on over the empty cells behind it.
std::size_t Table::reach(const TableRow& row) {
    std::size_t next = 1;
    while (row.kind == TableRow::Kind::cells && next < row.cells.size() && row.cells[next].empty()) ++next;
    return next;
}

std::string Table::line_of(const TableRow& row, const std::vector<std::size_t>& widths) const {
    const std::size_t first = reach(row);
    std::string line = row.kind == TableRow::Kind::cells
                           ? placed(row.cells[0], room_of(widths, first), columns_[0])
                           : std::string(widths[0], row.cells[0].empty() ? ' ' : stroke_mark);
    for (std::size_t c = first; c < columns_.size(); ++c) {
        line.append(gap, ' ');
        if (row.kind == TableRow::Kind::cells)
            line += placed(row.cells[c], widths[c], columns_[c]);
        else
            line.append(widths[c], row.cells[c].empty() ? ' ' : stroke_mark);
    }
    return line;
}

}  // namespace flutebook::render
