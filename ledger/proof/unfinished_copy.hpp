// A copy of a ledger that is being made: it has the rights of the ledger, and its own name once it is on disk.
#pragma once

#include <string>
#include <vector>

#include "ledger/store/unfinished_file.hpp"

namespace flutebook::ledger {

class UnfinishedCopy {
public:
    /// Makes a new empty file that this process owns, with the rights and the group of `original`. Throws LedgerError.
    UnfinishedCopy(const std::string& file, const std::string& original);

    [[nodiscard]] const std::string& name() const { return part_.name(); }

    /// On disk, under its own name, when it returns. Throws LedgerError: refused where that name is taken.
    void finish();

private:
    std::string file_;
    UnfinishedFile part_;
};

/// Throws LedgerError, refused, where `file` is there, or a log or journal that would be taken for its own.
void expect_free_name(const std::string& file);

/// Removes the copies in the folder of `file` that a killed process of this user left; answers with their names.
[[nodiscard]] std::vector<std::string> clear_unfinished_copies(const std::string& file);

}  // namespace flutebook::ledger
