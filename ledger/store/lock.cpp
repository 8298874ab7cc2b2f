#include "ledger/store/lock.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/file.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <cstring>
#include <utility>

#include "ledger/values/error.hpp"

namespace flutebook::ledger {

namespace {

// Who wrote itself into the lock, for people: the lock itself is the system's.
std::string holder(int descriptor) {
    std::array<char, 32> text{};
    const auto length = pread(descriptor, text.data(), text.size() - 1, 0);
    return length > 0 ? "process " + std::string(text.data(), static_cast<std::size_t>(length)) : "another process";
}

}  // namespace

WriteLock::WriteLock(const std::string& ledger_file) {
    const std::string name = ledger_file + ".lock";
    descriptor_ = open(name.c_str(), O_RDWR | O_CREAT | O_CLOEXEC, 0666);
    if (descriptor_ < 0)
        throw LedgerError(LedgerError::Kind::unfit,
                          fmt::format("{}: cannot be written: {}: {}; allow writing to the file and its folder",
                                      ledger_file, name, std::strerror(errno)));
    if (flock(descriptor_, LOCK_EX | LOCK_NB) != 0) {
        const std::string who = holder(descriptor_);
        close(descriptor_);
        throw LedgerError(LedgerError::Kind::refused,
                          fmt::format("{}: somebody else is writing to it: {} holds {}; one process writes at a time, "
                                      "try again when it has ended",
                                      ledger_file, who, name));
    }
    // Only a hint: where it cannot be written (a full disk), the lock holds all the same.
    const auto process = std::to_string(getpid());
    if (ftruncate(descriptor_, 0) == 0) static_cast<void>(!pwrite(descriptor_, process.data(), process.size(), 0));
}

WriteLock::WriteLock(WriteLock&& other) noexcept : descriptor_(std::exchange(other.descriptor_, -1)) {}

WriteLock::~WriteLock() {
    if (descriptor_ >= 0) close(descriptor_);
}

}  // namespace flutebook::ledger
