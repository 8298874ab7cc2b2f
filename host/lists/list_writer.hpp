// A list's answer written row by row: as CSV, as a workbook. No writer keeps a row.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "host/lists/list_table.hpp"

namespace flutebook::lists {

/// A file that is being written. Not thread-safe.
class ListWriter {
public:
    ListWriter() = default;
    ListWriter(const ListWriter&) = delete;
    ListWriter& operator=(const ListWriter&) = delete;
    virtual ~ListWriter() = default;

    virtual void write(const std::vector<TableValue>& row) = 0;
    /// What went wrong so far; empty where nothing did.
    [[nodiscard]] virtual std::string fault() const = 0;
    /// After the last row; the same answer.
    [[nodiscard]] virtual std::string close() = 0;
};

/// Numbers as the list has them: with commas between semicolons, else with points between commas. A text that a
/// spreadsheet would calculate is kept from it.
[[nodiscard]] std::unique_ptr<ListWriter> csv_list_writer(const std::string& file, ListNumbers numbers,
                                                          const std::vector<std::string>& header);

/// A workbook of one sheet.
[[nodiscard]] std::unique_ptr<ListWriter> workbook_list_writer(const std::string& file, int created_in_year,
                                                               const std::vector<std::string>& header);

}  // namespace flutebook::lists
