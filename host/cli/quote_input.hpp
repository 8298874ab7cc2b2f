// One argument of `quote`: the name of a file, or an enquiry in one line.
#pragma once

#include <string>

namespace flutebook::cli {

/// Whether a word is an enquiry: no file has this name, and it does not end as the name of one.
[[nodiscard]] bool is_enquiry(const std::string& word);

}  // namespace flutebook::cli
