// Checks the saved quotes and orders against what the chain of entries says of them.
#pragma once

#include "ledger/proof/chain_proof.hpp"
#include "ledger/proof/findings.hpp"
#include "ledger/proof/quotes_proof.hpp"
#include "ledger/store/database.hpp"

namespace flutebook::ledger::proof {

/// Heads that an entry keeps and no chain has, what was saved and stands in no entry, entries whose order is not there.
void prove_saved(Database& books, const NameList& names, const ChainRead& chain, const QuotesRead& quotes,
                 Findings& findings);

}  // namespace flutebook::ledger::proof
