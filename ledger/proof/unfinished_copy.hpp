// A copy that is being made: a new file beside the name that it will have, FILE.part-PROCESS. Killed, a process leaves
// it there; the next backup into that folder clears it away.
#pragma once

#include <string>
#include <vector>

namespace flutebook::ledger {

class UnfinishedCopy {
public:
    /// Makes an empty file that is nobody else's, with the rights and the group of `original`. Throws LedgerError.
    UnfinishedCopy(std::string file, const std::string& original);
    UnfinishedCopy(const UnfinishedCopy&) = delete;
    UnfinishedCopy& operator=(const UnfinishedCopy&) = delete;
    /// Removes it unless it got its name.
    ~UnfinishedCopy();

    [[nodiscard]] const std::string& name() const { return name_; }

    /// On disk, under its own name, when it returns. Throws LedgerError: refused where that name is taken.
    void finish();

private:
    std::string file_, name_;
    int descriptor_ = -1;  // holds the lock that says it is in use
};

/// Throws LedgerError, refused, where `file` is there, or a log or journal that would be taken for its own.
void expect_free_name(const std::string& file);

/// Removes the copies in the folder of `file` that a killed process of this user left; answers with their names.
[[nodiscard]] std::vector<std::string> clear_left_overs(const std::string& file);

}  // namespace flutebook::ledger
