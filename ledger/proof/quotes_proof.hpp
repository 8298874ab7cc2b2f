// Saved quotes and orders, read and hashed again.
#pragma once

#include <vector>

#include "ledger/database.hpp"
#include "ledger/proof/findings.hpp"
#include "ledger/proof/recount.hpp"
#include "ledger/sha256.hpp"

namespace flutebook::ledger::proof {

/// The hash of each, oldest first.
struct QuotesRead {
    std::vector<Hash> quotes, orders;
};

[[nodiscard]] QuotesRead prove_quotes(Database& books, const NameList& names, Findings& findings);

}  // namespace flutebook::ledger::proof
