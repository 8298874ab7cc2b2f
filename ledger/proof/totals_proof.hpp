// The tables of totals held against what the entries come to.
#pragma once

#include "ledger/proof/findings.hpp"
#include "ledger/proof/recount.hpp"
#include "ledger/store/database.hpp"

namespace flutebook::ledger::proof {

void prove_totals(Database& books, const NameList& names, const Recount& recount, Findings& findings);

}  // namespace flutebook::ledger::proof
