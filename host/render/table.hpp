// Columns that line up, on a page of 100 columns.
//
// Columns are as wide as their widest cell. Where a row would run over the page, the first cell of a row runs on over
// empty cells behind it; where that is not enough, the columns that may give way are cut, the widest first. A number
// is never cut.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

namespace flutebook::render {

enum class Align {
    left,
    right,
    decimal,  // numbers of different places, their points below each other
    flexible  // left, and gives way where the page ends
};

/// One thread at a time. Cells are cleaned of control characters as they come in.
class Table {
public:
    explicit Table(std::vector<Align> columns, std::size_t indent = 0)
        : columns_(std::move(columns)), indent_(indent) {}

    /// Missing cells at the end are empty. In a decimal column a cell that is no number stands to the right.
    void add(std::vector<std::string> cells);
    /// A stroke under the cells of these columns, over the sum that follows.
    void stroke(const std::vector<std::size_t>& columns);
    /// A line of text that lines up with nothing.
    void say(const std::string& text);

    /// Every line ends with a line end, none with a space.
    [[nodiscard]] std::string text() const;

private:
    struct TableRow {
        enum class Kind { cells, stroke, words };
        Kind kind;
        std::vector<std::string> cells;
    };

    enum class RunOn { never, over_empty_cells };

    [[nodiscard]] std::vector<std::size_t> widths_of(const std::vector<TableRow>& rows, RunOn run_on) const;
    static void line_up_points(std::vector<TableRow>& rows, std::size_t column);
    [[nodiscard]] static std::size_t reach(const TableRow& row);
    [[nodiscard]] std::string line_of(const TableRow& row, const std::vector<std::size_t>& widths) const;

    std::vector<Align> columns_;
    std::size_t indent_;
    std::vector<TableRow> rows_;
};

}  // namespace flutebook::render
