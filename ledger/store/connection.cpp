#include "ledger/store/connection.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/file.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <cstring>
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

}  // namespace

Connection::Connection(std::unique_ptr<Database> database, std::optional<WriteLock> lock, const Clock* clock)
    : lock_(std::move(lock)), database_(std::move(database)), clock_(clock) {
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

void Connection::refuse(const std::string& text) const {
    throw LedgerError(LedgerError::Kind::refused, file() + ": " + text);
}

void Connection::give_up(const std::string& text) const {
    throw LedgerError(LedgerError::Kind::unfit, file() + ": " + text);
}

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
