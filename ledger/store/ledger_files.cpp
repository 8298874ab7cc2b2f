#include "ledger/store/ledger_files.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <filesystem>
#include <optional>
#include <system_error>

#include "ledger/values/error.hpp"

namespace flutebook::ledger {

namespace {

namespace fs = std::filesystem;

constexpr mode_t rights = S_IRUSR | S_IWUSR | S_IRGRP | S_IWGRP | S_IROTH | S_IWOTH;

[[noreturn]] void refuse_file(const std::string& line) {
    throw LedgerError(LedgerError::Kind::refused, line);
}
[[noreturn]] void find_unfit(const std::string& line) {
    throw LedgerError(LedgerError::Kind::unfit, line);
}

std::optional<struct stat> facts_of(const std::string& file) {
    struct stat facts {};
    return stat(file.c_str(), &facts) == 0 ? std::optional(facts) : std::nullopt;
}

// Not through a link: somebody else may have put one there. By a descriptor that only names the file: closing any other
// would release the locks with which this process's own connection holds the log's index, and the next to open it would
// cut the index off beneath it.
void share(const std::string& name, const struct stat& ledger) {
    const int descriptor = open(name.c_str(), O_PATH | O_CLOEXEC | O_NOFOLLOW);
    if (descriptor < 0) return;
    struct stat facts {};
    if (fstat(descriptor, &facts) == 0 && S_ISREG(facts.st_mode) && facts.st_uid == geteuid()) {
        const bool has_group =
            facts.st_gid == ledger.st_gid || fchownat(descriptor, "", uid_t(-1), ledger.st_gid, AT_EMPTY_PATH) == 0;
        const mode_t wanted = ledger.st_mode & rights & (has_group ? rights : mode_t{S_IRUSR | S_IWUSR});
        if ((facts.st_mode & rights) != wanted)
            static_cast<void>(chmod(fmt::format("/proc/self/fd/{}", descriptor).c_str(), wanted));
    }
    close(descriptor);
}

}  // namespace

std::string folder_of(const std::string& file) {
    const auto folder = fs::path(file).parent_path();
    return folder.empty() ? "." : folder.string();
}

bool is_there(const std::string& file) {
    std::error_code ignored;
    return fs::exists(file, ignored);
}

std::string file_behind(const std::string& name) {
    std::error_code error;
    if (!fs::is_symlink(name, error)) return name;
    const auto target = fs::canonical(name, error);
    if (error) find_unfit(name + ": is a symbolic link that leads to no file; name the ledger itself");
    return target.string();
}

void expect_ledger_file(const std::string& file) {
    const auto facts = facts_of(file);
    if (!facts) refuse_file(file + ": there is no such ledger: nothing was saved or posted yet; post something first");
    if (!S_ISREG(facts->st_mode)) find_unfit(file + ": is not a ledger: no plain file; name another");
    if (facts->st_nlink > 1)
        refuse_file(
            fmt::format("{}: has more than one name: found {} hard links, and each would have a log of its own; remove "
                        "the other names, or work on a copy",
                        file, facts->st_nlink));
}

void create_ledger_file(const std::string& file) {
    const int descriptor = open(file.c_str(), O_RDWR | O_CREAT | O_EXCL | O_CLOEXEC | O_NOFOLLOW, rights);
    if (descriptor < 0)
        find_unfit(fmt::format("{}: cannot be made: {}; check that its folder is there and can be written to", file,
                               std::strerror(errno)));
    close(descriptor);
}

void share_side_files(const std::string& file) {
    const auto ledger = facts_of(file);
    if (!ledger) return;
    for (const auto* end : {"-wal", "-shm", ".lock"}) share(file + end, *ledger);
}

void expect_side_files_writable(const std::string& file) {
    for (const auto* end : {"-wal", "-shm", "-journal"}) {
        const auto name = file + end;
        if (const auto facts = facts_of(name); facts && access(name.c_str(), W_OK) != 0)
            find_unfit(
                fmt::format("{}: cannot be written: {} belongs to user {} and may not be changed; let that user open "
                            "the ledger for writing, or, when nobody uses it and {}-wal is empty, remove both {}-wal "
                            "and {}-shm",
                            file, name, facts->st_uid, file, file, file));
    }
}

bool has_broken_write(const std::string& file) {
    const auto facts = facts_of(file + "-journal");
    return facts && facts->st_size > 0;
}

WayToRead way_to_read(const std::string& file) {
    if (is_there(file + "-wal") && is_there(file + "-shm")) return WayToRead::shared;
    // The log holds entries that stand nowhere else.
    if (const auto log = facts_of(file + "-wal"); log && log->st_size > 0) return WayToRead::shared;
    return may_write(file) ? WayToRead::shared : WayToRead::alone;
}

bool may_write(const std::string& file) {
    return access(file.c_str(), W_OK) == 0 && access(folder_of(file).c_str(), W_OK) == 0;
}

}  // namespace flutebook::ledger
