// What `quote` is asked for in a word of the command line: the name of a file, or an enquiry as a person says it.
#pragma once

#include <string>

namespace flutebook::cli {

/// Whether a word is an enquiry: no file has this name, and it does not end as the name of one.
[[nodiscard]] bool is_enquiry(const std::string& word);

}  // namespace flutebook::cli
