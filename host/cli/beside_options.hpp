// The options of `quote` that compare a request with variants of it.
#pragma once

#include "host/beside/asked.hpp"
#include "host/command_line/command.hpp"

namespace flutebook::cli {

/// What the help of `quote` says of them.
extern const char* const beside_footer;

/// Adds the options to `quote`; `asked` must outlive it.
void add_beside_options(Command& command, beside::Asked& asked);

}  // namespace flutebook::cli
