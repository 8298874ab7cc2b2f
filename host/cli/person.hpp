// Who is at work: the name that stands beside what is written into the ledger.
#pragma once

#include <string>

namespace flutebook::cli {

/// The user name of the person who runs the program; the user number where there is no name.
[[nodiscard]] std::string person_at_work();

}  // namespace flutebook::cli
