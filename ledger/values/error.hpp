// The exception of the ledger, the third of the program's exceptions. It carries finished sentences, one a line:
// `where: what is wrong: what was found; what to do`.
#pragma once

#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

namespace flutebook {

/// Whatever was under way is undone before it is thrown: nothing half done is left on disk.
class LedgerError : public std::runtime_error {
public:
    /// Which of the two decides the exit code.
    enum class Kind {
        refused,  // the ledger is whole, but says no: a closed month, another writer, no such entry (1)
        unfit,    // the file cannot be worked with: damaged, of a newer version, not writable, a full disk (3)
    };

    LedgerError(Kind kind, std::vector<std::string> lines)
        : std::runtime_error(lines.empty() ? "unfit ledger" : lines.front()), kind_(kind), lines_(std::move(lines)) {}
    LedgerError(Kind kind, std::string line) : LedgerError(kind, std::vector<std::string>{std::move(line)}) {}

    [[nodiscard]] Kind kind() const { return kind_; }
    [[nodiscard]] const std::vector<std::string>& lines() const { return lines_; }

private:
    Kind kind_;
    std::vector<std::string> lines_;
};

}  // namespace flutebook
