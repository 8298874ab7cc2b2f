// One process writes: a lock on FILE.lock beside the ledger says which.
#pragma once

#include <string>

namespace flutebook::ledger {

/// Holds the lock until it is gone. The system lets go of it when the process ends, however it ends; the file stays.
class WriteLock {
public:
    /// Throws LedgerError: refused where another process (or another store of this one) holds it, unfit where the lock
    /// cannot be made.
    explicit WriteLock(const std::string& ledger_file);
    WriteLock(WriteLock&& other) noexcept;
    WriteLock& operator=(WriteLock&&) = delete;
    ~WriteLock();

private:
    int descriptor_ = -1;
};

}  // namespace flutebook::ledger
