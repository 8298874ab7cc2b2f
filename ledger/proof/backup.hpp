// Copies a ledger that is in use, and verifies the copy before it gets its name.
#pragma once

#include <string>
#include <vector>

#include "ledger/proof/verify.hpp"
#include "ledger/store/store.hpp"

namespace flutebook::ledger {

/// The copy's proof, which holds.
struct BackupProof : Proof {
    std::vector<std::string> cleared;  // what backups into the same folder left that were broken off; removed
};

/// Copies the ledger as it is now into `file`, while others may post. The copy has its name only once it is on disk
/// and verified: a copy that was broken off leaves no such file. It has the rights of the ledger. Throws LedgerError:
/// refused where `file` exists, unfit where the ledger's copy does not verify (each finding a line) or the disk is
/// full.
BackupProof backup(const Store& store, const std::string& file);

}  // namespace flutebook::ledger
