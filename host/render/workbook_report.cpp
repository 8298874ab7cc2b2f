// Each cell's type says what it is: a text is never taken for a number or a formula.
#include "host/render/workbook_report.hpp"

#include <xlsxwriter.h>

#include "host/render/formula_book.hpp"
#include "host/render/workbook_rows.hpp"

#include <algorithm>
#include <array>
#include <cerrno>
#include <ctime>
#include <fstream>
#include <map>
#include <system_error>

namespace flutebook::render {

namespace {

constexpr double name_width = 30, column_width = 18;

// "#,##0.000", "0.00%"; a unit of the cell's own stands behind the number.
std::string number_format(const Cell& cell) {
    const auto places = [](int decimals) { return decimals > 0 ? "." + std::string(std::size_t(decimals), '0') : ""; };
    if (const auto* share = std::get_if<Percentage>(&cell.value)) return "0" + places(share->decimals) + "%";
    std::string result;
    if (const auto* amount = std::get_if<Amount>(&cell.value)) result = "#,##0" + places(amount->decimals);
    if (const auto* number = std::get_if<Number>(&cell.value))
        result = number->form == Number::Form::fixed ? "#,##0" + places(number->decimals) : "General";
    const std::string unit = cell_text(cell).unit;
    if (unit.empty() || unit.find_first_of("\"\\") != std::string::npos) return result;
    return result + "\" " + unit + "\"";
}

// Without it the library writes the time of the day, and the bytes of the file differ each time.
lxw_error set_created(lxw_workbook* book, int year) {
    std::tm first{};
    first.tm_year = year - 1900;
    first.tm_mday = 1;
    lxw_doc_properties properties{};
    properties.created = timegm(&first);
    return workbook_set_properties(book, &properties);
}

class BookWriter {
public:
    BookWriter(lxw_workbook* book, int created_in_year) : book_(book) { note(set_created(book, created_in_year)); }

    void write(const ReportTable& table) {
        auto* sheet = workbook_add_worksheet(book_, table.name.c_str());
        if (sheet == nullptr) return note(LXW_ERROR_SHEETNAME_ALREADY_USED);
        worksheet_set_column(sheet, 0, 0, name_width, nullptr);
        worksheet_set_column(sheet, 1, static_cast<lxw_col_t>(table.columns.size()), column_width, nullptr);
        worksheet_freeze_panes(sheet, 1, 1);
        for (std::size_t c = 0; c < table.columns.size(); ++c)
            write_text(sheet, 0, c, table.columns[c].head(), format("", Weight::bold));
        for (std::size_t r = 0; r < table.rows.size(); ++r)
            for (std::size_t c = 0; c < table.rows[r].cells.size() && c < table.columns.size(); ++c)
                write_cell(sheet, r + 1, c, table.rows[r]);
        const std::vector<std::string> names = row_names(table);
        for (std::size_t r = 0; r < names.size(); ++r)
            if (table.rows[r].level > 0) write_text(sheet, r + 1, 0, names[r], format("", Weight::plain));
    }

    /// The first failure, that of closing among them.
    [[nodiscard]] lxw_error close() {
        note(workbook_close(book_));
        return failure_;
    }

private:
    enum class Weight { plain, bold };

    void note(lxw_error error) {
        if (failure_ == LXW_NO_ERROR) failure_ = error;
    }

    lxw_format* format(const std::string& number, Weight weight) {
        lxw_format*& result = formats_[{number, weight}];
        if (result != nullptr) return result;
        result = workbook_add_format(book_);
        if (weight == Weight::bold) format_set_bold(result);
        if (!number.empty()) format_set_num_format(result, number.c_str());
        return result;
    }

    void write_text(lxw_worksheet* sheet, std::size_t row, std::size_t column, const std::string& text,
                    lxw_format* with) {
        note(worksheet_write_string(sheet, static_cast<lxw_row_t>(row), static_cast<lxw_col_t>(column), text.c_str(),
                                    with));
    }

    void write_cell(lxw_worksheet* sheet, std::size_t r, std::size_t c, const TableRow& row) {
        const Cell& cell = row.cells[c];
        if (is_empty(cell)) return;
        const auto weight = row.kind == TableRow::Kind::item ? Weight::plain : Weight::bold;
        if (const auto number = raw_number(cell))
            note(worksheet_write_number(sheet, static_cast<lxw_row_t>(r), static_cast<lxw_col_t>(c), *number,
                                        format(number_format(cell), weight)));
        else
            write_text(sheet, r, c, whole_text(cell), format("", weight));
    }

    lxw_workbook* book_;
    std::map<std::pair<std::string, Weight>, lxw_format*> formats_;  // the book's own
    lxw_error failure_ = LXW_NO_ERROR;
};

// Tried first: the library itself would print its own message on standard error.
std::string why_not_writable(const std::string& file) {
    const std::ofstream stream(file, std::ios::binary);
    return stream.is_open() ? "" : std::generic_category().message(errno);
}

}  // namespace

std::string write_workbook(const std::string& file, const Report& report, int created_in_year) {
    if (auto why = why_not_writable(file); !why.empty()) return why;
    auto* book = workbook_new(file.c_str());
    if (book == nullptr) return "no memory";
    BookWriter writer(book, created_in_year);
    for (const ReportSection& section : report.sections)
        for (const Block& block : section.blocks)
            if (const auto* table = std::get_if<ReportTable>(&block)) writer.write(*table);
    const auto failure = writer.close();
    return failure == LXW_NO_ERROR ? "" : lxw_strerror(failure);
}

namespace {

class FormulaWriter {
public:
    FormulaWriter(lxw_workbook* book, int created_in_year) : book_(book) {
        note(set_created(book, created_in_year));
        for (lxw_format*& look : looks_) look = workbook_add_format(book);
        format_set_bold(look_of(BookCell::Look::head));
        format_set_bold(look_of(BookCell::Look::total));
        format_set_top(look_of(BookCell::Look::total), LXW_BORDER_THIN);
        format_set_bg_color(look_of(BookCell::Look::input), 0xFBF2DD);
        format_set_font_color(look_of(BookCell::Look::worked_out), LXW_COLOR_BLUE);
    }

    void write(const BookSheet& sheet) {
        sheet_ = workbook_add_worksheet(book_, sheet.name.c_str());
        if (sheet_ == nullptr) return note(LXW_ERROR_SHEETNAME_ALREADY_USED);
        for (std::size_t c = 0; c < sheet.widths.size(); ++c)
            note(worksheet_set_column(sheet_, static_cast<lxw_col_t>(c), static_cast<lxw_col_t>(c), sheet.widths[c],
                                      nullptr));
        worksheet_freeze_panes(sheet_, 1, 1);
        for (std::size_t r = 0; r < sheet.rows.size(); ++r)
            for (std::size_t c = 0; c < sheet.rows[r].size(); ++c) write_cell(r, c, sheet.rows[r][c]);
    }

    [[nodiscard]] lxw_error close() {
        note(workbook_close(book_));
        return failure_;
    }

private:
    void note(lxw_error error) {
        if (failure_ == LXW_NO_ERROR) failure_ = error;
    }

    [[nodiscard]] lxw_format* look_of(BookCell::Look look) { return looks_.at(static_cast<std::size_t>(look)); }

    void write_cell(std::size_t r, std::size_t c, const BookCell& cell) {
        const auto row = static_cast<lxw_row_t>(r);
        const auto column = static_cast<lxw_col_t>(c);
        lxw_format* look = look_of(cell.look);
        if (const auto* text = std::get_if<std::string>(&cell.value))
            note(worksheet_write_string(sheet_, row, column, text->c_str(), look));
        if (const auto* number = std::get_if<double>(&cell.value))
            note(worksheet_write_number(sheet_, row, column, *number, look));
        if (const auto* formula = std::get_if<BookFormula>(&cell.value))
            note(worksheet_write_formula_num(sheet_, row, column, formula->text.c_str(), look, formula->result));
    }

    lxw_workbook* book_;
    lxw_worksheet* sheet_ = nullptr;
    std::array<lxw_format*, 5> looks_{};  // the book's own
    lxw_error failure_ = LXW_NO_ERROR;
};

}  // namespace

std::string write_formula_book(const std::string& file, const FormulaBook& book, int created_in_year) {
    if (auto why = why_not_writable(file); !why.empty()) return why;
    auto* made = workbook_new(file.c_str());
    if (made == nullptr) return "no memory";
    FormulaWriter writer(made, created_in_year);
    for (const BookSheet& sheet : book.sheets) writer.write(sheet);
    const auto failure = writer.close();
    return failure == LXW_NO_ERROR ? "" : lxw_strerror(failure);
}

struct WorkbookRows::Book {
    lxw_workbook* book = nullptr;  // null once it is closed
    lxw_worksheet* sheet = nullptr;
    lxw_format *bold = nullptr, *amount = nullptr;
};

WorkbookRows::WorkbookRows(const std::string& file, const std::string& sheet, int created_in_year)
    : book_(std::make_unique<Book>()), fault_(why_not_writable(file)) {
    if (!fault_.empty()) return;
    lxw_workbook_options options{};
    options.constant_memory = LXW_TRUE;
    book_->book = workbook_new_opt(file.c_str(), &options);
    if (book_->book == nullptr) {
        fault_ = "no memory";
        return;
    }
    note(set_created(book_->book, created_in_year));
    book_->sheet = workbook_add_worksheet(book_->book, sheet.c_str());
    if (book_->sheet == nullptr) {
        note(LXW_ERROR_MEMORY_MALLOC_FAILED);
        return;
    }
    book_->bold = workbook_add_format(book_->book);
    format_set_bold(book_->bold);
    book_->amount = workbook_add_format(book_->book);
    format_set_num_format(book_->amount, "#,##0.00##");
}

WorkbookRows::~WorkbookRows() {
    if (book_->book != nullptr) static_cast<void>(workbook_close(book_->book));
}

void WorkbookRows::note(int error) {
    if (error != LXW_NO_ERROR && fault_.empty()) fault_ = lxw_strerror(static_cast<lxw_error>(error));
}

// The format's own end: the library itself would only leave the row out.
bool WorkbookRows::takes_row() {
    if (row_ >= LXW_ROW_MAX && fault_.empty()) fault_ = "a sheet holds no more than 1048576 rows; write it as .csv";
    return fault_.empty();
}

void WorkbookRows::write_heads(const std::vector<std::string>& heads) {
    if (!takes_row()) return;
    worksheet_set_column(book_->sheet, 0, static_cast<lxw_col_t>(heads.size()), column_width, nullptr);
    worksheet_freeze_panes(book_->sheet, 1, 1);
    for (std::size_t c = 0; c < heads.size(); ++c)
        note(worksheet_write_string(book_->sheet, 0, static_cast<lxw_col_t>(c), heads[c].c_str(), book_->bold));
    next_row();
}

void WorkbookRows::write_text(std::size_t column, const std::string& text) {
    if (!takes_row()) return;
    constexpr std::size_t longest = 32000;  // bytes, below the 32767 characters of a cell
    std::size_t length = std::min(text.size(), longest);
    while (length < text.size() && length > 0 && (static_cast<unsigned char>(text[length]) & 0xC0U) == 0x80U) --length;
    note(worksheet_write_string(book_->sheet, static_cast<lxw_row_t>(row_), static_cast<lxw_col_t>(column),
                                text.substr(0, length).c_str(), nullptr));
}

void WorkbookRows::write_number(std::size_t column, double number) {
    if (!takes_row()) return;
    note(worksheet_write_number(book_->sheet, static_cast<lxw_row_t>(row_), static_cast<lxw_col_t>(column), number,
                                nullptr));
}

void WorkbookRows::write_amount(std::size_t column, double amount) {
    if (!takes_row()) return;
    note(worksheet_write_number(book_->sheet, static_cast<lxw_row_t>(row_), static_cast<lxw_col_t>(column), amount,
                                book_->amount));
}

std::string WorkbookRows::close() {
    if (book_->book != nullptr) {
        const auto result = workbook_close(book_->book);
        book_->book = nullptr;
        note(result);
    }
    return fault_;
}

}  // namespace flutebook::render
