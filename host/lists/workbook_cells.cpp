// The formats and the counts of days are those of ECMA-376, part 1, 18.8.30 and 18.17.4.1.
#include "host/lists/workbook_cells.hpp"

#include <algorithm>
#include <charconv>
#include <chrono>
#include <cmath>

#include "host/base/characters.hpp"
#include "host/base/date.hpp"

namespace flutebook::lists {

namespace {

constexpr std::size_t most_columns = 16384;

char lower(char sign) {
    return sign >= 'A' && sign <= 'Z' ? static_cast<char>(sign - 'A' + 'a') : sign;
}

}  // namespace

std::optional<std::size_t> column_of_cell(std::string_view name) {
    std::size_t column = 0, at = 0;
    while (at < name.size() && name[at] >= 'A' && name[at] <= 'Z' && column <= most_columns)
        column = column * 26 + static_cast<std::size_t>(name[at++] - 'A') + 1;
    if (at == 0 || at == name.size() || column > most_columns) return std::nullopt;
    for (; at < name.size(); ++at)
        if (!base::is_digit(name[at])) return std::nullopt;
    return column - 1;
}

std::string cell_name(std::size_t column, std::size_t row) {
    std::string letters;
    for (std::size_t rest = column + 1; rest > 0; rest = (rest - 1) / 26)
        letters.insert(letters.begin(), static_cast<char>('A' + (rest - 1) % 26));
    return letters + std::to_string(row + 1);
}

bool is_day_format(int number) {
    return (number >= 14 && number <= 17) || number == 22 || (number >= 27 && number <= 31) || number == 36 ||
           (number >= 50 && number <= 58);
}

bool is_day_format(std::string_view code) {
    for (std::size_t at = 0; at < code.size(); ++at) {
        const char sign = lower(code[at]);
        if (sign == ';') return false;  // behind it stands what negative numbers look like
        if (sign == '"' || sign == '[') at = std::min(code.find(sign == '"' ? '"' : ']', at + 1), code.size());
        if (sign == '\\' || sign == '_' || sign == '*') ++at;
        if (sign == 'y' || sign == 'd') return true;
    }
    return false;
}

std::optional<std::string> day_of(double number, DayCount count) {
    using namespace std::chrono;
    constexpr double first = 61, last = 2958465;  // 1900-03-01, 9999-12-31
    if (!(number >= (count == DayCount::from_1900 ? first : 0) && number <= last)) return std::nullopt;
    const sys_days begin = count == DayCount::from_1900 ? sys_days{year{1899} / 12 / 30} : sys_days{year{1904} / 1 / 1};
    return base::to_string(year_month_day{begin + days{static_cast<int>(std::floor(number))}});
}

std::optional<double> number_of(std::string_view text) {
    double value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (error != std::errc{} || end != text.data() + text.size() || !std::isfinite(value)) return std::nullopt;
    return value;
}

}  // namespace flutebook::lists
