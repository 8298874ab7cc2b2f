// How words of the command line become values: one place for each kind of value that several commands take.
#pragma once

#include <cstdint>
#include <functional>
#include <limits>
#include <optional>
#include <string>

#include "host/base/date.hpp"
#include "ledger/reading/month.hpp"

namespace flutebook::cli {

/// Keeps a word's value. The answer says what is wrong with the word, as a message goes on after the option's name; it
/// is empty where nothing is.
using Reader = std::function<std::string(const std::string&)>;

/// What a whole number is called, and its least and greatest value.
struct WholeNumber {
    const char* what;
    std::int64_t low;
    std::int64_t high = std::numeric_limits<std::int64_t>::max();
};

inline constexpr const char* threads_help = "work on so many at once; the answer is the same";
inline constexpr const char* html_help = "write the answer as a page to this file, .html, in place of text";

/// Each reads into `value`, which must outlive the reader.
[[nodiscard]] Reader read_text(std::string& value);
[[nodiscard]] Reader read_text(std::optional<std::string>& value);
[[nodiscard]] Reader read_day(std::optional<base::Date>& value);
[[nodiscard]] Reader read_month(ledger::Month& value);
[[nodiscard]] Reader read_page_file(std::string& value);
[[nodiscard]] Reader read_whole_number(const WholeNumber& kind, std::int64_t& value);
[[nodiscard]] Reader read_threads(unsigned& value);

/// As many threads as the machine runs at once.
[[nodiscard]] unsigned usual_threads();

}  // namespace flutebook::cli
