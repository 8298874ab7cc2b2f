// A report: an answer for people, as values, independent of its format. Each label, unit and base of a share stands
// here once; the renderers (text, Markdown, CSV, workbook, HTML) know these types and nothing of quotes, months or
// plants.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include "host/base/date.hpp"
#include "host/render/drawing.hpp"
#include "ledger/values/money.hpp"

namespace flutebook::render {

/// A change shows its sign even where it is positive.
enum class Sign { negative_only, always };

struct Number {
    /// `fixed`: exactly `decimals` places. `brief`: at most `decimals`. `significant`: the digits that a reader
    /// multiplies with, at most `decimals` places. Whole sixteenths of an inch are shown as on a ruler, 15 1/4, where
    /// `unit` is "in".
    enum class Form { fixed, brief, significant };
    double value;
    int decimals;
    Form form = Form::fixed;
    std::string unit = {};  // where it differs from row to row; else it stands in the column
    Sign sign = Sign::negative_only;
    int digits = 6;  // of `significant`
};

/// Money in the report's currency: with all four places, or with its coin's where it was rounded to the coin.
struct Amount {
    Money money;
    int decimals = 4;
    std::string currency = {};  // where the column does not name it
    Sign sign = Sign::negative_only;
};

/// A share of a base: 0.25 is shown as "25.00 %".
struct Percentage {
    double share;
    int decimals = 2;
    std::string base = {};  // "of product"; empty where the column says it
    Sign sign = Sign::negative_only;
};

/// A name as a program takes it: `paper.issued`.
struct Code {
    std::string text;
};

using CellValue = std::variant<std::monostate, std::string, Code, Number, Amount, Percentage, base::Date>;

struct Cell {
    CellValue value;
    std::string link;  // the id of a section of the same report, or empty

    Cell() = default;
    Cell(const char* text) : value(std::string(text)) {}
    Cell(std::string text) : value(std::move(text)) {}
    Cell(Code code) : value(std::move(code)) {}
    Cell(Number number, std::string to = {}) : value(std::move(number)), link(std::move(to)) {}
    Cell(Amount amount) : value(std::move(amount)) {}
    Cell(Percentage percentage) : value(std::move(percentage)) {}
    Cell(base::Date date) : value(date) {}
    template <typename Value>
    Cell(const std::optional<Value>& maybe) {
        if (maybe) value = *maybe;
    }
};

/// A sentence. `code` is to be copied, so it is never broken into lines.
struct Note {
    enum class Kind { sentence, warning, item, code };
    std::string text;
    Kind kind = Kind::sentence;
    std::size_t level = 0;  // how deep it is indented
};

/// What stands behind a label: one text, or a list.
struct LabelledText {
    std::string label;
    std::vector<std::string> items;
};
using Facts = std::vector<LabelledText>;

struct TableColumn {
    /// `text` is never cut; `name` is, where the page is too narrow; `sentence` stands last and is broken into lines;
    /// `number` holds numbers, amounts and shares and stands to the right.
    enum class Kind { text, name, sentence, number };
    /// `hidden`: a cell that says the same as the one above it is left empty on a page.
    enum class Repeats { shown, hidden };
    std::string title;
    Kind kind = Kind::number;
    std::string unit = {};  // of a number; of a share, its base; of an amount, the currency
    Repeats repeats = Repeats::shown;
    enum class Weight { plain, strong };     // what a reader looks for first
    enum class Shown { everywhere, files };  // on pages and in files for other programs, or in those alone
    Weight weight = Weight::plain;
    Shown shown = Shown::everywhere;

    /// Title and unit as one text.
    [[nodiscard]] std::string head() const;
};

struct TableRow {
    /// `group` is the title of the rows below it. A `subtotal` is a sum among other rows, a `total` ends one side.
    enum class Kind { item, group, subtotal, total };
    std::vector<Cell> cells;  // missing ones at the end are empty
    Kind kind = Kind::item;
    std::size_t level = 0;         // how deep the first cell is indented
    std::vector<Note> notes = {};  // below the row
    std::string figure = {};       // that the row shows, as a reader asks for what is behind it; empty: none
};

struct ReportTable {
    std::string name;  // of a sheet in a workbook, at most 31 characters, unique in its report
    std::vector<TableColumn> columns;
    std::vector<TableRow> rows = {};

    void add(std::vector<Cell> cells, std::size_t level = 0) { rows.push_back({std::move(cells), {}, level}); }
    void add(TableRow::Kind kind, std::vector<Cell> cells) { rows.push_back({std::move(cells), kind}); }
};

/// Text, Markdown, CSV and a workbook leave drawings out.
using Block = std::variant<Note, Facts, ReportTable, Drawings>;

struct ReportSection {
    /// A `part` opens a page of its own within the report; sections follow it.
    enum class Kind { section, part };
    std::string title;  // may be empty
    std::vector<Block> blocks = {};
    Kind kind = Kind::section;
    std::string aside = {};  // of a part: at the other edge
    std::string id = {};     // where cells link to it
};

struct ReportHeading {
    std::string title, aside;
    Facts facts;
};

struct Report {
    std::string kind, name;  // "month", "2026-10": what a file of its figures is called by
    std::optional<ReportHeading> heading;
    std::vector<ReportSection> sections;
};

/// The text of a cell, the same in every form that people read.
struct CellText {
    std::string text;  // the number without its unit
    std::string unit;
};
[[nodiscard]] CellText cell_text(const Cell& cell);
/// Text and unit as one text.
[[nodiscard]] std::string whole_text(const Cell& cell);

/// The number itself, not rounded: a share as a fraction, an amount in the currency. Nothing of a text.
[[nodiscard]] std::optional<double> raw_number(const Cell& cell);
[[nodiscard]] bool is_empty(const Cell& cell);

/// The table as a page shows it: every row with a cell a column, without the columns that only files have and without
/// the cells that repeat what stands above them.
[[nodiscard]] ReportTable page_table(ReportTable table);

/// The name of each row outside its table: a row below another has that row's name before its own,
/// "early: side-trim".
[[nodiscard]] std::vector<std::string> row_names(const ReportTable& table);

}  // namespace flutebook::render
