// A copy of a ledger in use, proven whole before it has its name.
#pragma once

#include <string>

#include "ledger/proof/verify.hpp"
#include "ledger/store/store.hpp"

namespace flutebook::ledger {

/// Copies the ledger as it is now into `file`, while others may post. The copy has its name only once it is on disk
/// and verified: a copy that was broken off leaves no such file. Answers with the copy's proof, which holds. Throws
/// LedgerError: refused where `file` exists, unfit where the ledger's copy does not verify (each finding a line) or
/// the disk is full.
Proof backup(const Store& store, const std::string& file);

}  // namespace flutebook::ledger
