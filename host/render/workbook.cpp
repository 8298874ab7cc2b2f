#include "host/render/workbook.hpp"

#include <xlsxwriter.h>

#include <cerrno>
#include <ctime>
#include <fstream>
#include <system_error>

namespace flutebook::render {

namespace {

constexpr double name_width = 30, column_width = 18;

// Of a sheet that is being written: the first failure.
class Cells {
public:
    explicit Cells(lxw_worksheet* sheet) : sheet_(sheet) {}

    void write(std::size_t row, std::size_t column, const Cell& cell, lxw_format* format) {
        const auto r = static_cast<lxw_row_t>(row);
        const auto c = static_cast<lxw_col_t>(column);
        lxw_error error = LXW_NO_ERROR;
        if (const auto* text = std::get_if<std::string>(&cell))
            error = worksheet_write_string(sheet_, r, c, text->c_str(), format);
        else if (const auto* number = std::get_if<double>(&cell))
            error = worksheet_write_number(sheet_, r, c, *number, format);
        if (failure_ == LXW_NO_ERROR) failure_ = error;
    }
    [[nodiscard]] lxw_error failure() const { return failure_; }

private:
    lxw_worksheet* sheet_;
    lxw_error failure_ = LXW_NO_ERROR;
};

lxw_error write_table(lxw_workbook* book, const ExportedTable& table, lxw_format* bold) {
    auto* sheet = workbook_add_worksheet(book, table.name.c_str());
    if (sheet == nullptr) return LXW_ERROR_SHEETNAME_ALREADY_USED;
    worksheet_set_column(sheet, 0, 0, name_width, nullptr);
    worksheet_set_column(sheet, 1, static_cast<lxw_col_t>(table.columns.size()), column_width, nullptr);
    worksheet_freeze_panes(sheet, 1, 1);
    Cells cells(sheet);
    for (std::size_t c = 0; c < table.columns.size(); ++c) cells.write(0, c, table.columns[c], bold);
    for (std::size_t r = 0; r < table.rows.size(); ++r)
        for (std::size_t c = 0; c < table.rows[r].size(); ++c) cells.write(r + 1, c, table.rows[r][c], nullptr);
    return cells.failure();
}

// The library would write the time of the day into the file, and other bytes each time.
void set_created(lxw_workbook* book, int year) {
    std::tm first{};
    first.tm_year = year - 1900;
    first.tm_mday = 1;
    lxw_doc_properties properties{};
    properties.created = timegm(&first);
    workbook_set_properties(book, &properties);
}

// Asked first, since the library complains on standard error in words of its own.
std::string why_not_writable(const std::string& file) {
    const std::ofstream stream(file, std::ios::binary);
    return stream.is_open() ? "" : std::generic_category().message(errno);
}

}  // namespace

std::string write_workbook(const std::string& file, const std::vector<ExportedTable>& tables, int created_in_year) {
    if (const auto why = why_not_writable(file); !why.empty()) return why;
    auto* book = workbook_new(file.c_str());
    if (book == nullptr) return "no memory";
    set_created(book, created_in_year);
    auto* bold = workbook_add_format(book);
    format_set_bold(bold);
    lxw_error failure = LXW_NO_ERROR;
    for (const auto& table : tables)
        if (const auto error = write_table(book, table, bold); failure == LXW_NO_ERROR) failure = error;
    const auto closed = workbook_close(book);
    if (failure == LXW_NO_ERROR) failure = closed;
    return failure == LXW_NO_ERROR ? "" : lxw_strerror(failure);
}

}  // namespace flutebook::render
