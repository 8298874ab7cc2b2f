#include "ledger/store/unfinished_file.hpp"

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

#include "ledger/store/ledger_files.hpp"

namespace flutebook::ledger {

namespace {

namespace fs = std::filesystem;

constexpr const char* part_mark = ".part-";
// A copy of a ledger has files of its own beside it.
constexpr std::array<const char*, 4> part_ends = {"", "-journal", "-wal", "-shm"};

// Without the group of the original, the new file is its owner's alone.
void take_rights(int descriptor, const struct stat& original) {
    const bool has_group = fchown(descriptor, uid_t(-1), original.st_gid) == 0;
    const mode_t wanted = original.st_mode & (has_group ? 0666 : 0600);
    static_cast<void>(fchmod(descriptor, wanted | S_IRUSR | S_IWUSR));
}

void remove_part(const std::string& name) {
    for (const auto* end : part_ends) unlink((name + end).c_str());
}

bool is_whole_number(const std::string& digits) {
    return !digits.empty() && digits.front() != '0' &&
           std::all_of(digits.begin(), digits.end(), [](char sign) { return sign >= '0' && sign <= '9'; });
}

// "NAME.part-4711", "NAME.part-4711-2". No process that ends is number 1, which is how the first part of a file is
// named that somebody cut up.
bool is_part_name(const std::string& name) {
    const auto mark = name.rfind(part_mark);
    if (mark == std::string::npos || mark == 0) return false;
    const auto numbers = name.substr(mark + std::strlen(part_mark));
    const auto dash = numbers.find('-');
    const auto process = numbers.substr(0, dash);
    return is_whole_number(process) && process != "1" &&
           (dash == std::string::npos || is_whole_number(numbers.substr(dash + 1)));
}

bool names_same_file(const std::string& name, int descriptor) {
    struct stat named {
    }, opened{};
    return lstat(name.c_str(), &named) == 0 && fstat(descriptor, &opened) == 0 && named.st_dev == opened.st_dev &&
           named.st_ino == opened.st_ino;
}

// Of this user, in use by nobody.
bool is_left_over(const std::string& name, IsOurContent is_our_content) {
    const int descriptor = open(name.c_str(), O_RDONLY | O_CLOEXEC | O_NOFOLLOW | O_NONBLOCK);
    if (descriptor < 0) return false;
    struct stat facts {};
    const bool is_own = fstat(descriptor, &facts) == 0 && S_ISREG(facts.st_mode) && facts.st_uid == geteuid();
    const bool is_ours = is_own && (facts.st_size == 0 || is_our_content(descriptor));
    const bool is_free = is_ours && flock(descriptor, LOCK_EX | LOCK_NB) == 0;
    close(descriptor);
    return is_free;
}

}  // namespace

UnfinishedFile::UnfinishedFile(std::string file, const std::string& original, int tries) : file_(std::move(file)) {
    struct stat facts {};
    const bool has_original = !original.empty() && stat(original.c_str(), &facts) == 0;
    for (int number = 0; number < tries; ++number) {
        const auto name =
            fmt::format("{}{}{}{}", file_, part_mark, getpid(), number == 0 ? "" : fmt::format("-{}", number));
        error_ = make(name, has_original);
        if (error_ != EEXIST) break;
    }
    if (error_ == 0 && has_original) take_rights(descriptor_, facts);
}

int UnfinishedFile::make(const std::string& name, bool is_private) {
    const mode_t mode = is_private ? 0600 : 0666;
    descriptor_ = open(name.c_str(), O_RDWR | O_CREAT | O_EXCL | O_CLOEXEC | O_NOFOLLOW, mode);
    if (descriptor_ < 0) return errno;
    // Where somebody cleared it away before it was locked, it has no name any longer.
    flock(descriptor_, LOCK_EX | LOCK_NB);
    if (names_same_file(name, descriptor_)) {
        name_ = name;
        return 0;
    }
    close(std::exchange(descriptor_, -1));
    return EEXIST;
}

UnfinishedFile::~UnfinishedFile() {
    if (!name_.empty()) remove_part(name_);
    if (descriptor_ >= 0) close(descriptor_);
}

int UnfinishedFile::flush() const {
    return fsync(descriptor_) == 0 ? 0 : errno;
}

int UnfinishedFile::give_name(IfNamed there) {
    if (there == IfNamed::replace) return rename(name_.c_str(), file_.c_str()) == 0 ? 0 : errno;
    if (renameat2(AT_FDCWD, name_.c_str(), AT_FDCWD, file_.c_str(), RENAME_NOREPLACE) == 0) return 0;
    // Where the file system cannot do that in one step, by a second name.
    if (errno != EEXIST && link(name_.c_str(), file_.c_str()) == 0) return 0;
    return errno;
}

std::vector<std::string> clear_left_overs(const std::string& file, IsOurContent is_our_content) {
    std::vector<std::string> cleared;
    std::error_code error;
    for (fs::directory_iterator entry(folder_of(file), error), end; !error && entry != end; entry.increment(error))
        if (const auto name = entry->path().string();
            is_part_name(entry->path().filename().string()) && is_left_over(name, is_our_content))
            cleared.push_back(name);
    std::sort(cleared.begin(), cleared.end());
    for (const auto& name : cleared) remove_part(name);
    return cleared;
}

}  // namespace flutebook::ledger
