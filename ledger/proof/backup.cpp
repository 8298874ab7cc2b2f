#include "ledger/proof/backup.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <filesystem>

#include "ledger/store/connection.hpp"

namespace flutebook::ledger {

namespace {

namespace fs = std::filesystem;

// Removed again unless it got its name.
class TemporaryFile {
public:
    explicit TemporaryFile(std::string name) : name_(std::move(name)) { remove(); }
    TemporaryFile(const TemporaryFile&) = delete;
    TemporaryFile& operator=(const TemporaryFile&) = delete;
    ~TemporaryFile() { remove(); }

    [[nodiscard]] const std::string& name() const { return name_; }

private:
    void remove() const {
        for (const auto* end : {"", "-journal", "-wal", "-shm"}) unlink((name_ + end).c_str());
    }

    std::string name_;
};

[[noreturn]] void give_up(const std::string& file, const std::string& what) {
    throw LedgerError(LedgerError::Kind::unfit,
                      fmt::format("{}: cannot be written: {}: {}; no copy was kept", file, what, std::strerror(errno)));
}

void flush(const std::string& name, int flags) {
    const int descriptor = open(name.c_str(), flags | O_CLOEXEC);
    const bool is_flushed = descriptor >= 0 && fsync(descriptor) == 0;
    if (descriptor >= 0) close(descriptor);
    if (!is_flushed) give_up(name, "it could not be flushed to disk");
}

void expect_whole(const Proof& proof, const std::string& file) {
    if (proof.holds()) return;
    std::vector<std::string> lines = {file +
                                      ": no copy was kept: what was copied does not verify; verify the ledger itself"};
    for (const auto& finding : proof.findings) lines.push_back(file + ": " + finding.text);
    throw LedgerError(LedgerError::Kind::unfit, lines);
}

[[noreturn]] void refuse_to_overwrite(const std::string& file) {
    throw LedgerError(LedgerError::Kind::refused,
                      file + ": exists already: a backup overwrites nothing; name another file");
}

}  // namespace

Proof backup(const Store& store, const std::string& file) {
    std::error_code ignored;
    if (fs::exists(fs::symlink_status(file, ignored))) refuse_to_overwrite(file);
    // Another process that copies to the same name has a file of its own.
    const TemporaryFile copy(fmt::format("{}.part-{}", file, getpid()));
    store.cabinet().books().copy_to(copy.name());
    const auto proof = verify(Store::open_for_reading(copy.name()));
    expect_whole(proof, file);
    flush(copy.name(), O_RDWR);
    // Unlike a renaming, this fails where the name was taken meanwhile.
    if (link(copy.name().c_str(), file.c_str()) != 0) {
        if (errno == EEXIST) refuse_to_overwrite(file);
        give_up(file, "the copy could not be given its name");
    }
    const auto folder = fs::path(file).has_parent_path() ? fs::path(file).parent_path().string() : std::string(".");
    flush(folder, O_RDONLY | O_DIRECTORY);
    return proof;
}

}  // namespace flutebook::ledger
