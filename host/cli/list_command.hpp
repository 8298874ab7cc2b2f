// `quote` of a list: a file of many items, a row each.
#pragma once

#include <optional>
#include <string>

#include "host/base/date.hpp"
#include "host/command_line/run_context.hpp"

namespace flutebook::cli {

struct ListQuote {
    std::string file;
    std::string answer_file;  // empty: none
    bool is_replacing = false, is_json = false;
    unsigned threads = 1;
    std::optional<base::Date> date;
};

/// Whether a file is a list, by its name.
[[nodiscard]] bool is_list_file(const std::string& file);

/// Opens the plant and costs the list. Throws InputError and ModelError.
[[nodiscard]] ExitCode quote_list(const ListQuote& asked, const RunContext& context);

}  // namespace flutebook::cli
