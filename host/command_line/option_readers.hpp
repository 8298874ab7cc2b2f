// Readers of option values from the command line: one for each kind of value that several commands use.
#pragma once

#include <cstdint>
#include <functional>
#include <limits>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "host/base/date.hpp"
#include "ledger/reading/month.hpp"

namespace flutebook::cli {

/// Stores the value of an argument or option. Returns what is wrong with its text, to follow the option's name in a
/// message; empty where nothing is wrong.
using Reader = std::function<std::string(const std::string&)>;

/// What messages call a whole number, and its least and greatest value.
struct WholeNumber {
    const char* what;
    std::int64_t low;
    std::int64_t high = std::numeric_limits<std::int64_t>::max();
};

inline constexpr const char* threads_help = "number of threads; the answer does not depend on it";
inline constexpr const char* replace_help = "replace an output file that exists already";
inline constexpr const char* html_help = "write the answer as a page to this file, .html, instead of text";

/// Each stores into `value`, which must outlive the reader. A text may be any bytes, as a file's name may.
[[nodiscard]] Reader read_text(std::string& value);
/// A name, a number or a reason: one line of plain text.
[[nodiscard]] Reader read_line(std::string& value);
[[nodiscard]] Reader read_line(std::optional<std::string>& value);
[[nodiscard]] Reader read_day(std::optional<base::Date>& value);
[[nodiscard]] Reader read_month(ledger::Month& value);
[[nodiscard]] Reader read_page_file(std::string& value);
[[nodiscard]] Reader read_workbook_file(std::string& value);
[[nodiscard]] Reader read_list_file(std::string& value);
[[nodiscard]] Reader read_drawing_file(std::string& value);
/// "400x300x250": two or three lengths in mm.
[[nodiscard]] Reader read_inside_size(std::vector<double>& value);
/// "NAME=VALUE" is added to those before.
[[nodiscard]] Reader read_measure(std::vector<std::pair<std::string, double>>& values);
[[nodiscard]] Reader read_whole_number(const WholeNumber& kind, std::int64_t& value);
[[nodiscard]] Reader read_threads(unsigned& value);

/// As many threads as the machine runs at once.
[[nodiscard]] unsigned usual_threads();

}  // namespace flutebook::cli
