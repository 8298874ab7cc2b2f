#include "host/render/exported.hpp"

#include <fmt/format.h>

#include <array>
#include <string_view>

namespace flutebook::render {

namespace {

// What makes a spreadsheet calculate, in half and full width, after OWASP's application security verification standard
// 5.0, item 1.2.10 (seen at second hand).
constexpr std::array<std::string_view, 11> beginnings = {
    "=", "+", "-", "@", "\t", "\r", "\n", "\xEF\xBC\x9D", "\xEF\xBC\x8B", "\xEF\xBC\x8D", "\xEF\xBC\xA0"};

bool begins_a_formula(std::string_view text) {
    if (!text.empty() && text.front() == '\0') return true;
    for (const auto beginning : beginnings)
        if (text.substr(0, beginning.size()) == beginning) return true;
    return false;
}

std::string value_text(const Cell& cell) {
    if (const auto* text = std::get_if<std::string>(&cell)) return csv_cell(*text);
    if (const auto* number = std::get_if<double>(&cell)) return fmt::format("{}", *number);
    return "";
}

}  // namespace

std::string csv_cell(const std::string& text) {
    std::string result = begins_a_formula(text) ? "\"'" : "\"";
    for (const char sign : text) {
        if (sign == '"') result += '"';
        result += sign;
    }
    return result + "\"";
}

std::string csv_text(const std::string& month, const std::vector<ExportedTable>& tables) {
    std::string result = "\"month\",\"table\",\"row\",\"column\",\"value\"\r\n";
    for (const auto& table : tables)
        for (const auto& row : table.rows)
            for (std::size_t c = 1; c < row.size(); ++c)
                if (!std::holds_alternative<std::monostate>(row[c]))
                    result += fmt::format("{},{},{},{},{}\r\n", csv_cell(month), csv_cell(table.name),
                                          value_text(row.front()), csv_cell(table.columns[c]), value_text(row[c]));
    return result;
}

}  // namespace flutebook::render
