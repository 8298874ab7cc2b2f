// A spreadsheet file of one sheet that is written row by row: no row is kept in memory. It is implemented beside the
// reports' workbook, in the one place that knows the library.
#pragma once

#include <cstddef>
#include <memory>
#include <string>
#include <vector>

namespace flutebook::render {

/// Texts are texts, whatever they begin with. Not thread-safe.
class WorkbookRows {
public:
    /// Makes the file. The same rows and year give the same bytes.
    WorkbookRows(const std::string& file, const std::string& sheet, int created_in_year);
    WorkbookRows(const WorkbookRows&) = delete;
    WorkbookRows& operator=(const WorkbookRows&) = delete;
    ~WorkbookRows();

    /// The first row, which stays in sight.
    void write_heads(const std::vector<std::string>& heads);

    /// A cell of the present row, left to right. A text longer than a cell holds is cut.
    void write_text(std::size_t column, const std::string& text);
    void write_number(std::size_t column, double number);
    /// With two decimals or more, as an amount.
    void write_amount(std::size_t column, double amount);
    void next_row() { ++row_; }

    /// What went wrong so far; empty where nothing did.
    [[nodiscard]] const std::string& fault() const { return fault_; }
    /// Finishes the file. The same answer.
    [[nodiscard]] std::string close();

private:
    struct Book;
    void note(int error);
    [[nodiscard]] bool takes_row();

    std::unique_ptr<Book> book_;
    std::size_t row_ = 0;
    std::string fault_;
};

}  // namespace flutebook::render
