// What the figures and names in a workbook's sheet mean: cells by their names, days by their numbers and formats.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace flutebook::lists {

/// The column of a cell's name, from 0: 1 of "B7". Nothing where it is no such name.
[[nodiscard]] std::optional<std::size_t> column_of_cell(std::string_view name);

/// "B7"; both from 0.
[[nodiscard]] std::string cell_name(std::size_t column, std::size_t row);

/// Whether a number under this format is a day: by the number of a format that every workbook has, or by a format of
/// the workbook's own ("dd/mm/yyyy", not "0.00" and not "[Red]0").
[[nodiscard]] bool is_day_format(int number);
[[nodiscard]] bool is_day_format(std::string_view code);

/// From which day a workbook counts.
enum class DayCount { from_1900, from_1904 };

/// YYYY-MM-DD of a number; its time of the day is left out. Nothing for the days that the two counts disagree on.
[[nodiscard]] std::optional<std::string> day_of(double number, DayCount count);

/// A number as a person writes it: the decimal that it is but for the last bits. Nothing where it is none.
[[nodiscard]] std::optional<double> number_of(std::string_view text);

}  // namespace flutebook::lists
