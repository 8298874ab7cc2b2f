// Copying a ledger in use, the use-case both faces call.
#pragma once

#include <string>

#include "ledger/proof/backup.hpp"

namespace flutebook::services {

/// Copies the ledger in `file` to `copy`, which is proven whole before it has that name: the copy's proof, which holds.
/// Throws LedgerError.
[[nodiscard]] ledger::Proof backup(const std::string& file, const std::string& copy);

}  // namespace flutebook::services
