#include "host/cli/quote_input.hpp"

#include <algorithm>
#include <filesystem>
#include <system_error>

namespace flutebook::cli {

bool is_enquiry(const std::string& word) {
    if (word.find(' ') == std::string::npos) return false;
    static const char* const ends[] = {".yaml", ".yml", ".csv", ".xlsx"};
    std::error_code unknown;
    return std::none_of(std::begin(ends), std::end(ends), [&](const char* end) { return word.ends_with(end); }) &&
           !std::filesystem::exists(word, unknown);
}

}  // namespace flutebook::cli
