// Who is at work: the name that stands beside what is written into the ledger.
#pragma once

#include <string>

namespace flutebook::cli {

/// The name that this machine has for whoever runs the program; their number where it has none.
[[nodiscard]] std::string person_at_work();

}  // namespace flutebook::cli
