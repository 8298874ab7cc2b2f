#include "ledger/store/connection.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <chrono>
#include <cstring>
#include <thread>
#include <utility>

#include "ledger/values/error.hpp"
#include "ledger/writing/entry_writer.hpp"

namespace flutebook::ledger {

namespace {

// Who wrote itself into the lock, for people: the lock itself is the system's.
std::string holder(int descriptor) {
    std::array<char, 32> text{};
    const auto length = pread(descriptor, text.data(), text.size() - 1, 0);
    return length > 0 ? "process " + std::string(text.data(), static_cast<std::size_t>(length)) : "another process";
}

[[noreturn]] void refuse_lock_file(const std::string& ledger_file, const std::string& name) {
    if (errno == ELOOP)
        throw LedgerError(
            LedgerError::Kind::refused,
            fmt::format("{}: cannot be locked: {} is a symbolic link; remove the link", ledger_file, name));
    throw LedgerError(LedgerError::Kind::unfit,
                      fmt::format("{}: cannot be written: {}: {}; allow writing to the file and its folder",
                                  ledger_file, name, std::strerror(errno)));
}

// The lock's file holds nothing but a process's number: another file of that name is left as it is.
void expect_lock_file(int descriptor, const std::string& ledger_file, const std::string& name) {
    struct stat facts {};
    std::array<char, 24> text{};
    const bool is_plain = fstat(descriptor, &facts) == 0 && S_ISREG(facts.st_mode) && facts.st_nlink == 1;
    const auto length = is_plain ? pread(descriptor, text.data(), text.size(), 0) : -1;
    const bool is_number =
        length >= 0 && length < static_cast<ssize_t>(text.size()) &&
        std::all_of(text.begin(), text.begin() + length, [](char sign) { return sign >= '0' && sign <= '9'; });
    if (is_number) return;
    throw LedgerError(LedgerError::Kind::refused,
                      fmt::format("{}: cannot be locked: {} is another file, not the lock of a ledger; give the ledger "
                                  "another name",
                                  ledger_file, name));
}

// Readers that may not use the log hold the lock together, for the moment that they read.
constexpr auto patience_with_readers = std::chrono::seconds(5);

void take(int descriptor, const std::string& ledger_file, const std::string& name) {
    const auto until = std::chrono::steady_clock::now() + patience_with_readers;
    while (flock(descriptor, LOCK_EX | LOCK_NB) != 0) {
        const bool is_being_read = flock(descriptor, LOCK_SH | LOCK_NB) == 0;
        if (is_being_read && std::chrono::steady_clock::now() < until) {
            flock(descriptor, LOCK_UN);
            std::this_thread::sleep_for(std::chrono::milliseconds(20));
            continue;
        }
        throw LedgerError(LedgerError::Kind::refused,
                          is_being_read
                              ? fmt::format("{}: is being read by a user who may not write to it; try again when that "
                                            "has ended",
                                            ledger_file)
                              : fmt::format("{}: somebody else is writing to it: {} holds {}; one process writes at a "
                                            "time, try again when it has ended",
                                            ledger_file, holder(descriptor), name));
    }
}

}  // namespace

Connection::Connection(std::unique_ptr<Database> database, Hold hold, const Clock* clock)
    : hold_(std::move(hold)), database_(std::move(database)), clock_(clock) {
    database_->lock_down();
}

// Statements go before their connection: members are destroyed last first.
Connection::~Connection() = default;

Database& Connection::books() {
    if (writer_ && database_->is_in_transaction()) writer_->write_totals();
    return *database_;
}

Lease Connection::ask(const char* sql) {
    static_cast<void>(books());
    return ask_entries(sql);
}

Lease Connection::ask_entries(const char* sql) {
    const auto kept = kept_.find(sql);
    if (kept != kept_.end()) return Lease(kept->second);
    return Lease(kept_.emplace(sql, Statement(*database_, sql)).first->second);
}

void Connection::begin() {
    if (!database_->is_writable()) refuse("is open for reading: nothing can be posted; open it for writing");
    if (database_->is_in_transaction()) refuse("is posting already: end that posting first");
    database_->run("BEGIN IMMEDIATE");
    try {
        if (!writer_) writer_ = std::make_unique<EntryWriter>(*database_);
        writer_->begin();
    } catch (const LedgerError&) {
        undo();
        throw;
    }
}

void Connection::commit() {
    try {
        writer_->write_totals();
        database_->run("COMMIT");
    } catch (const LedgerError&) {
        undo();
        throw;
    }
}

void Connection::undo() noexcept {
    database_->undo();
    if (writer_) writer_->forget();
}

std::optional<ClockLag> Connection::clock_lag() const {
    return writer_ ? writer_->clock_lag() : std::nullopt;
}

void Connection::refuse(const std::string& text) const {
    throw LedgerError(LedgerError::Kind::refused, file() + ": " + text);
}

void Connection::give_up(const std::string& text) const {
    throw LedgerError(LedgerError::Kind::unfit, file() + ": " + text);
}

WriteLock::WriteLock(const std::string& ledger_file) {
    const std::string name = ledger_file + ".lock";
    descriptor_ = open(name.c_str(), O_RDWR | O_CREAT | O_CLOEXEC | O_NOFOLLOW | O_NONBLOCK, 0666);
    try {
        if (descriptor_ < 0) refuse_lock_file(ledger_file, name);
        expect_lock_file(descriptor_, ledger_file, name);
        take(descriptor_, ledger_file, name);
    } catch (const LedgerError&) {
        if (descriptor_ >= 0) close(descriptor_);
        throw;
    }
    // Only a hint: where it cannot be written (a full disk), the lock holds all the same.
    const auto process = std::to_string(getpid());
    if (ftruncate(descriptor_, 0) == 0) static_cast<void>(!pwrite(descriptor_, process.data(), process.size(), 0));
}

WriteLock::WriteLock(WriteLock&& other) noexcept : descriptor_(std::exchange(other.descriptor_, -1)) {}

ReadHold::ReadHold(const std::string& ledger_file)
    : descriptor_(open((ledger_file + ".lock").c_str(), O_RDONLY | O_CLOEXEC | O_NOFOLLOW | O_NONBLOCK)) {
    if (descriptor_ < 0 || flock(descriptor_, LOCK_SH | LOCK_NB) == 0) return;
    const auto who = holder(descriptor_);
    close(descriptor_);
    throw LedgerError(
        LedgerError::Kind::refused,
        fmt::format("{}: somebody else is writing to it: {}; you may only read it when nobody writes, or once its "
                    "owner has opened it",
                    ledger_file, who));
}

ReadHold::ReadHold(ReadHold&& other) noexcept : descriptor_(std::exchange(other.descriptor_, -1)) {}

ReadHold::~ReadHold() {
    if (descriptor_ >= 0) close(descriptor_);
}

WriteLock::~WriteLock() {
    if (descriptor_ >= 0) close(descriptor_);
}

}  // namespace flutebook::ledger
