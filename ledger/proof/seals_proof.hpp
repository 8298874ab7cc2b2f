// Checks closed months against the sums of their entries: totals, stocks, and no inner account below zero.
#pragma once

#include "ledger/proof/chain_proof.hpp"
#include "ledger/proof/findings.hpp"
#include "ledger/proof/quotes_proof.hpp"
#include "ledger/store/database.hpp"

namespace flutebook::ledger::proof {

void prove_seals(Database& books, const NameList& names, const ChainRead& chain, const QuotesRead& quotes,
                 Findings& findings);

}  // namespace flutebook::ledger::proof
