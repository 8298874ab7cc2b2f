// The cell's type says what is text and what is a number; its look is never used to guess.
#include "host/render/csv_report.hpp"

#include <fmt/format.h>

#include "host/render/escaping.hpp"

namespace flutebook::render {

namespace {

std::string value_text(const Cell& cell) {
    const auto number = raw_number(cell);
    return number ? fmt::format("{}", *number) : csv_cell(whole_text(cell));
}

std::string table_csv(const std::string& report, const ReportTable& table) {
    std::string result;
    const std::vector<std::string> names = row_names(table);
    for (std::size_t r = 0; r < table.rows.size(); ++r) {
        const TableRow& row = table.rows[r];
        for (std::size_t c = 1; c < row.cells.size() && c < table.columns.size(); ++c)
            if (!is_empty(row.cells[c]))
                result += fmt::format("{},{},{},{},{}\r\n", report, csv_cell(table.name), csv_cell(names[r]),
                                      csv_cell(table.columns[c].head()), value_text(row.cells[c]));
    }
    return result;
}

}  // namespace

std::string to_csv(const Report& report) {
    std::string result = csv_cell(report.kind) + ",\"table\",\"row\",\"column\",\"value\"\r\n";
    for (const ReportSection& section : report.sections)
        for (const Block& block : section.blocks)
            if (const auto* table = std::get_if<ReportTable>(&block))
                result += table_csv(csv_cell(report.name), *table);
    return result;
}

}  // namespace flutebook::render
