// A file that is being made: a new one beside the name that it will have, NAME.part-PROCESS. It is locked while it is
// made. A process that is killed leaves it there; the next one that makes such a file in that folder clears it away.
#pragma once

#include <string>
#include <vector>

namespace flutebook::ledger {

/// Not thread-safe. Nothing here throws: what failed is told as an errno, 0 where nothing did.
class UnfinishedFile {
public:
    /// Makes a new empty file that this process owns, even if a file of that name exists. It has the rights and the
    /// group of `original`, where that is given and there: who may not read that one may not read this one. Of `tries`
    /// names, the first that is free.
    UnfinishedFile(std::string file, const std::string& original, int tries);
    UnfinishedFile(const UnfinishedFile&) = delete;
    UnfinishedFile& operator=(const UnfinishedFile&) = delete;
    /// Removes it unless it got its name.
    ~UnfinishedFile();

    /// Why it could not be made.
    [[nodiscard]] int error() const { return error_; }
    [[nodiscard]] const std::string& name() const { return name_; }

    /// Until it is on disk.
    [[nodiscard]] int flush() const;

    /// Its own name. What has that name already is replaced, or stays: then the answer is EEXIST.
    enum class IfNamed { refuse, replace };
    [[nodiscard]] int give_name(IfNamed there);

private:
    [[nodiscard]] int make(const std::string& name, bool is_private);

    std::string file_, name_;
    int descriptor_ = -1;  // holds the lock that says that it is in use
    int error_ = 0;
};

/// Whether an open file is one that the caller makes.
using IsOurContent = bool (*)(int descriptor);

/// Removes what killed processes of this user left in the folder of `file`: files of such a name that nobody makes any
/// longer, empty or with a content that is ours. Answers with their names.
[[nodiscard]] std::vector<std::string> clear_left_overs(const std::string& file, IsOurContent is_our_content);

}  // namespace flutebook::ledger
