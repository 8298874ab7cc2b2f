#include "ledger/store/connection.hpp"

#include <utility>

#include "ledger/writing/entry_writer.hpp"

namespace flutebook::ledger {

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

}  // namespace flutebook::ledger
