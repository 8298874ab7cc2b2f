// Saved quotes, their records and orders, read and hashed again.
#pragma once

#include <vector>

#include "ledger/proof/findings.hpp"
#include "ledger/proof/totals_proof.hpp"
#include "ledger/store/database.hpp"
#include "ledger/values/sha256.hpp"

namespace flutebook::ledger::proof {

/// The hash of each, oldest first.
struct QuotesRead {
    std::vector<Hash> quotes, orders, records;
};

[[nodiscard]] QuotesRead prove_quotes(Database& books, const NameList& names, Findings& findings);

}  // namespace flutebook::ledger::proof
