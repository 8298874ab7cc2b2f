// The width of each column is settled over all rows before any line is written.
#include "host/render/text_table.hpp"

#include <algorithm>

#include "host/render/text.hpp"

namespace flutebook::render {

namespace {

using ColumnKind = TableColumn::Kind;
using RowKind = TableRow::Kind;

constexpr std::size_t gap = 2;
constexpr std::size_t table_indent = 2;
constexpr std::size_t indent_below = 6;  // of what stands below a row
constexpr std::size_t least_name = 8;
constexpr std::size_t least_sentence = 40;

// From the point or the comma on.
std::size_t tail_of(const std::string& number) {
    const std::size_t point = number.find_first_of(".,");
    return point == std::string::npos ? 0 : number.size() - point;
}

// A row as text, a cell a column.
struct TextRow {
    std::vector<std::string> cells;
    const TableRow* row;  // none: the heads of the columns
};

class TableLayout {
public:
    TableLayout(const ReportTable& table, std::size_t width)
        : table_(page_table(table)),
          columns_(table_.columns),
          rows_(table_.rows),
          page_width_(width),
          columns_in_line_(columns_.size()) {
        if (!columns_.empty() && columns_.back().kind == ColumnKind::sentence) --columns_in_line_;
        add_heads();
        for (const TableRow& row : rows_) add_row(row);
        for (std::size_t c = 0; c < columns_.size(); ++c)
            if (columns_[c].kind == ColumnKind::number) line_up_points(c);
        settle_widths();
    }

    [[nodiscard]] std::string text() const {
        std::string result;
        for (std::size_t r = 0; r < lines_.size(); ++r) {
            const TableRow* row = lines_[r].row;
            if (row != nullptr && is_sum(*row)) result += stroke_above(lines_[r]);
            result += line_of(lines_[r]);
            for (const Note& note : row == nullptr ? std::vector<Note>{} : row->notes)
                result += note_text(note, indent_below, page_width_);
            const bool ends_a_side = row != nullptr && row->kind == RowKind::total && r + 1 < lines_.size();
            if (ends_a_side && lines_[r + 1].row->kind != RowKind::total) result += '\n';
        }
        return result;
    }

private:
    static bool is_group(const TextRow& line) { return line.row != nullptr && line.row->kind == RowKind::group; }
    static bool is_sum(const TableRow& row) { return row.kind == RowKind::subtotal || row.kind == RowKind::total; }

    void add_heads() {
        TextRow heads{{}, nullptr};
        bool has_one = false;
        for (const TableColumn& column : columns_) {
            heads.cells.push_back(cleaned(column.head()));
            has_one = has_one || !heads.cells.back().empty();
        }
        if (has_one) lines_.push_back(std::move(heads));
    }

    void add_row(const TableRow& row) {
        TextRow line{{}, &row};
        for (const Cell& cell : row.cells) line.cells.push_back(cleaned(whole_text(cell)));
        if (!line.cells.empty()) line.cells[0].insert(0, 2 * row.level, ' ');
        lines_.push_back(std::move(line));
    }

    // Numbers get spaces behind them where others have longer tails, and units stand below each other.
    void line_up_points(std::size_t c) {
        std::size_t tail = 0, unit = 0;
        for (const TableRow& row : rows_) {
            const CellText cell = cell_text(row.cells[c]);
            if (!raw_number(row.cells[c])) continue;
            tail = std::max(tail, tail_of(cell.text));
            unit = std::max(unit, width_of(cell.unit));
        }
        for (TextRow& line : lines_) {
            if (line.row == nullptr || !raw_number(line.row->cells[c])) continue;
            const CellText cell = cell_text(line.row->cells[c]);
            line.cells[c] = cell.text + std::string(tail - tail_of(cell.text), ' ');
            if (unit == 0) continue;
            line.cells[c] += ' ' + cleaned(cell.unit) + std::string(unit - width_of(cell.unit), ' ');
        }
    }

    // Of the first `columns` columns, with the gaps between them.
    [[nodiscard]] std::size_t room_of(std::size_t columns) const {
        std::size_t room = columns == 0 ? 0 : gap * (columns - 1);
        for (std::size_t c = 0; c < columns; ++c) room += widths_[c];
        return room;
    }

    // How many columns the first cell may take: it runs on over the empty cells behind it.
    [[nodiscard]] std::size_t reach(const TextRow& line) const {
        std::size_t next = 1;
        while (next < columns_in_line_ && line.cells[next].empty()) ++next;
        return next;
    }

    void widen(bool runs_on) {
        widths_.assign(columns_in_line_, 0);
        const auto taken = [&](const TextRow& line) { return runs_on || is_group(line) ? reach(line) : 1; };
        for (const TextRow& line : lines_)
            for (std::size_t c = 0; c < columns_in_line_; ++c)
                if (c > 0 || taken(line) == 1) widths_[c] = std::max(widths_[c], width_of(line.cells[c]));
        for (const TextRow& line : lines_) {
            const std::size_t room = room_of(taken(line));
            if (width_of(line.cells[0]) > room) widths_[0] += width_of(line.cells[0]) - room;
        }
    }

    [[nodiscard]] bool is_too_wide() const { return table_indent + room_of(columns_in_line_) > page_width_; }

    // Columns that a sentence needs beside its row, without a break where it is short.
    [[nodiscard]] std::size_t room_for_sentence() const {
        std::size_t widest = 1;
        for (const TextRow& line : lines_) widest = std::max(widest, width_of(line.cells.back()));
        return gap + std::min(widest, least_sentence);
    }

    // Also where the table has no sentence.
    [[nodiscard]] bool has_room_for_sentence() const {
        return columns_in_line_ == columns_.size() ||
               table_indent + room_of(columns_in_line_) + room_for_sentence() <= page_width_;
    }

    // Each head in lines no wider than the cells below it where its words allow, the last line just above them.
    void break_heads() {
        if (lines_.empty() || lines_.front().row != nullptr) return;
        std::vector<std::vector<std::string>> heads;
        std::size_t most = 1;
        for (std::size_t c = 0; c < columns_.size(); ++c) {
            std::size_t widest = 1;
            for (std::size_t r = 1; r < lines_.size(); ++r)
                if (!is_group(lines_[r])) widest = std::max(widest, width_of(lines_[r].cells[c]));
            heads.push_back(wrapped(lines_.front().cells[c], widest));
            most = std::max(most, heads.back().size());
        }
        std::vector<TextRow> broken;
        for (std::size_t i = 0; i < most; ++i) {
            TextRow& line = broken.emplace_back(TextRow{{}, nullptr});
            for (const auto& head : heads)
                line.cells.push_back(i + head.size() < most ? "" : head[i + head.size() - most]);
        }
        lines_.erase(lines_.begin());
        lines_.insert(lines_.begin(), broken.begin(), broken.end());
    }

    void settle_widths() {
        if (columns_in_line_ == 0) return;
        widen(false);
        if (is_too_wide() || !has_room_for_sentence()) {
            const std::vector<TextRow> whole = lines_;
            const bool has_room_without = !is_too_wide();
            break_heads();
            widen(false);
            if (has_room_without && !has_room_for_sentence()) {
                lines_ = whole;
                widen(false);
            }
        }
        if (is_too_wide()) widen(true);
        while (is_too_wide()) {
            std::size_t widest = columns_in_line_;
            for (std::size_t c = 0; c < columns_in_line_; ++c)
                if (columns_[c].kind == ColumnKind::name && widths_[c] > least_name &&
                    (widest == columns_in_line_ || widths_[c] > widths_[widest]))
                    widest = c;
            if (widest == columns_in_line_) break;
            --widths_[widest];
        }
        is_sentence_beside_ = has_room_for_sentence();
    }

    [[nodiscard]] std::string placed(const std::string& cell, std::size_t width, const TableColumn& column) const {
        const std::string shown = column.kind == ColumnKind::name ? cut(cell, width) : cell;
        const std::size_t used = width_of(shown);
        const std::string space(width > used ? width - used : 0, ' ');
        return column.kind == ColumnKind::number ? space + shown : shown + space;
    }

    static std::string ended(std::string line) {
        line.erase(line.find_last_not_of(' ') + 1);
        return line + '\n';
    }

    [[nodiscard]] std::string stroke_above(const TextRow& line) const {
        std::string result(table_indent, ' ');
        for (std::size_t c = 0; c < columns_in_line_; ++c) {
            if (c > 0) result.append(gap, ' ');
            const bool is_summed = columns_[c].kind == ColumnKind::number && !line.cells[c].empty();
            result.append(widths_[c], is_summed ? '-' : ' ');
        }
        return ended(std::move(result));
    }

    [[nodiscard]] std::string line_of(const TextRow& line) const {
        std::string result(table_indent, ' ');
        const std::size_t first = columns_in_line_ == 0 ? 0 : reach(line);
        if (first > 0) result += placed(line.cells[0], room_of(first), columns_[0]);
        for (std::size_t c = first; c < columns_in_line_; ++c)
            result += std::string(gap, ' ') + placed(line.cells[c], widths_[c], columns_[c]);
        if (columns_in_line_ == columns_.size() || line.cells.back().empty()) return ended(std::move(result));
        if (is_sentence_beside_) {
            const std::size_t begin = table_indent + room_of(columns_in_line_);
            result.append(begin > width_of(result) ? begin - width_of(result) : 0, ' ');
            return hanging(result + std::string(gap, ' '), line.cells.back(), page_width_);
        }
        if (line.row == nullptr) return ended(std::move(result));
        return ended(std::move(result)) + hanging(std::string(indent_below, ' '), line.cells.back(), page_width_);
    }

    const ReportTable table_;
    const std::vector<TableColumn>& columns_;
    const std::vector<TableRow>& rows_;
    std::size_t page_width_;
    std::size_t columns_in_line_;  // all but a sentence
    std::vector<TextRow> lines_;
    std::vector<std::size_t> widths_;
    bool is_sentence_beside_ = false;
};

}  // namespace

std::string table_text(const ReportTable& table, std::size_t width) {
    return table.rows.empty() ? "" : TableLayout(table, width).text();
}

std::string note_text(const Note& note, std::size_t indent, std::size_t width) {
    const std::string margin(indent + 2 * note.level, ' ');
    switch (note.kind) {
        case Note::Kind::code: {
            std::string result;
            for (std::size_t at = 0; at < note.text.size();) {
                const std::size_t end = std::min(note.text.find('\n', at), note.text.size());
                result += margin + cleaned(note.text.substr(at, end - at)) + '\n';
                at = end + 1;
            }
            return result;
        }
        case Note::Kind::warning:
            return hanging(margin + "! ", cleaned(note.text), width);
        case Note::Kind::item:
        case Note::Kind::sentence:
            break;
    }
    return hanging(margin, cleaned(note.text), width);
}

}  // namespace flutebook::render
