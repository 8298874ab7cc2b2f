// The keys of a request as the help of `quote` prints them.
#pragma once

#include <string>

namespace flutebook::cli {

/// Begins with an empty line; 80 columns wide.
[[nodiscard]] std::string request_keys_help();

}  // namespace flutebook::cli
