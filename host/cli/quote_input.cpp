#include "host/cli/quote_input.hpp"

#include <filesystem>
#include <system_error>

#include "host/cli/list_command.hpp"
#include "host/command_line/whole_file.hpp"

namespace flutebook::cli {

bool is_enquiry(const std::string& word) {
    if (word.empty()) return true;
    if (word.find(' ') == std::string::npos) return false;
    if (is_list_file(word) || ends_in(word, ".yaml") || ends_in(word, ".yml")) return false;
    std::error_code unknown;
    return !std::filesystem::exists(word, unknown);
}

}  // namespace flutebook::cli
