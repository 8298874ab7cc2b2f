#include "ledger/proof/unfinished_copy.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <cstdio>
#include <cstring>
#include <filesystem>
#include <system_error>
#include <utility>

#include "ledger/values/error.hpp"

namespace flutebook::ledger {

namespace {

namespace fs = std::filesystem;

constexpr const char* part_mark = ".part-";
constexpr std::array<const char*, 4> part_ends = {"", "-journal", "-wal", "-shm"};

[[noreturn]] void fail_copy(const std::string& file, const std::string& what) {
    throw LedgerError(LedgerError::Kind::unfit,
                      fmt::format("{}: cannot be written: {}: {}; no copy was kept", file, what, std::strerror(errno)));
}

[[noreturn]] void refuse_to_overwrite(const std::string& file) {
    throw LedgerError(LedgerError::Kind::refused,
                      file + ": exists already: a backup overwrites nothing; name another file");
}

std::string folder_of_copy(const std::string& file) {
    const auto folder = fs::path(file).parent_path();
    return folder.empty() ? "." : folder.string();
}

void flush_folder(const std::string& file) {
    const int descriptor = open(folder_of_copy(file).c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    const bool is_flushed = descriptor >= 0 && fsync(descriptor) == 0;
    if (descriptor >= 0) close(descriptor);
    if (!is_flushed) fail_copy(file, "its folder could not be flushed to disk");
}

// Who may not read the original may not read the copy: without its group, the copy is its owner's alone.
void take_rights(int descriptor, const std::string& original) {
    struct stat facts {};
    if (stat(original.c_str(), &facts) != 0) return;
    const bool has_group = fchown(descriptor, uid_t(-1), facts.st_gid) == 0;
    const mode_t wanted = facts.st_mode & (has_group ? 0666 : 0600);
    static_cast<void>(fchmod(descriptor, wanted | S_IRUSR | S_IWUSR));
}

void remove_part(const std::string& name) {
    for (const auto* end : part_ends) unlink((name + end).c_str());
}

// "NAME.part-4711"
bool is_part_name(const std::string& name) {
    const auto mark = name.rfind(part_mark);
    if (mark == std::string::npos || mark == 0) return false;
    const auto digits = name.substr(mark + std::strlen(part_mark));
    return !digits.empty() &&
           std::all_of(digits.begin(), digits.end(), [](char sign) { return sign >= '0' && sign <= '9'; });
}

// A ledger's header, or the nothing that a copy begins with; of this user; in use by nobody.
bool is_left_over(const std::string& name) {
    const int descriptor = open(name.c_str(), O_RDONLY | O_CLOEXEC | O_NOFOLLOW | O_NONBLOCK);
    if (descriptor < 0) return false;
    struct stat facts {};
    std::array<char, 72> header{};
    const bool is_ours = fstat(descriptor, &facts) == 0 && S_ISREG(facts.st_mode) && facts.st_uid == geteuid();
    const bool is_ledger =
        is_ours && (facts.st_size == 0 || (pread(descriptor, header.data(), header.size(), 0) == ssize_t{72} &&
                                           std::memcmp(header.data(), "SQLite format 3", 16) == 0 &&
                                           std::memcmp(header.data() + 68, "FLUT", 4) == 0));
    const bool is_free = is_ledger && flock(descriptor, LOCK_EX | LOCK_NB) == 0;
    close(descriptor);
    return is_free;
}

}  // namespace

UnfinishedCopy::UnfinishedCopy(std::string file, const std::string& original)
    : file_(std::move(file)), name_(fmt::format("{}{}{}", file_, part_mark, getpid())) {
    if (is_left_over(name_)) remove_part(name_);
    descriptor_ = open(name_.c_str(), O_RDWR | O_CREAT | O_EXCL | O_CLOEXEC | O_NOFOLLOW, 0600);
    if (descriptor_ < 0) fail_copy(file_, name_);
    flock(descriptor_, LOCK_EX | LOCK_NB);
    take_rights(descriptor_, original);
}

UnfinishedCopy::~UnfinishedCopy() {
    remove_part(name_);
    close(descriptor_);
}

void UnfinishedCopy::finish() {
    if (fsync(descriptor_) != 0) fail_copy(file_, "it could not be flushed to disk");
    expect_free_name(file_);
    // Fails where the name was taken meanwhile. Where the file system cannot do that in one step, by a second name.
    const bool is_renamed = renameat2(AT_FDCWD, name_.c_str(), AT_FDCWD, file_.c_str(), RENAME_NOREPLACE) == 0 ||
                            (errno != EEXIST && link(name_.c_str(), file_.c_str()) == 0);
    if (!is_renamed && errno == EEXIST) refuse_to_overwrite(file_);
    if (!is_renamed) fail_copy(file_, "the copy could not be given its name");
    flush_folder(file_);
}

void expect_free_name(const std::string& file) {
    std::error_code ignored;
    if (fs::exists(fs::symlink_status(file, ignored))) refuse_to_overwrite(file);
    for (const auto* end : {"-wal", "-journal"})
        if (fs::exists(file + end, ignored) && fs::file_size(file + end, ignored) > 0)
            throw LedgerError(LedgerError::Kind::refused,
                              fmt::format("{}: {}{} is there, which would be taken for the log of the copy; move it "
                                          "away, or name another file",
                                          file, file, end));
}

std::vector<std::string> clear_left_overs(const std::string& file) {
    std::vector<std::string> cleared;
    std::error_code error;
    for (fs::directory_iterator entry(folder_of_copy(file), error), end; !error && entry != end; entry.increment(error))
        if (const auto name = entry->path().string();
            is_part_name(entry->path().filename().string()) && is_left_over(name))
            cleared.push_back(name);
    std::sort(cleared.begin(), cleared.end());
    for (const auto& name : cleared) remove_part(name);
    return cleared;
}

}  // namespace flutebook::ledger
