// Proving a ledger whole, the use-case both faces call.
#pragma once

#include <optional>
#include <string>

#include "ledger/proof/verify.hpp"

namespace flutebook::services {

/// Proves the ledger in `file`, and that it still holds the entry whose hash is `kept_head`. Others may post meanwhile.
/// Throws LedgerError where it cannot be read at all, or where the head is none.
[[nodiscard]] ledger::Proof verify(const std::string& file, const std::optional<std::string>& kept_head);

}  // namespace flutebook::services
