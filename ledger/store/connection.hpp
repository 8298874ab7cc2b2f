// What an opened store holds: its connection, its lock, and what writing needs. For the ledger's own sources.
//
// One process writes: a lock on FILE.lock beside the ledger says which.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <unordered_map>
#include <variant>

#include "ledger/store/clock.hpp"
#include "ledger/store/database.hpp"
#include "ledger/store/store.hpp"

namespace flutebook::ledger {

/// Holds the lock until it is gone. The system releases it when the process ends, however it ends; the file stays.
class WriteLock {
public:
    /// Throws LedgerError: refused where another process (or another store of this one) holds it, or where a file of
    /// that name is no lock; unfit where the lock cannot be made.
    explicit WriteLock(const std::string& ledger_file);
    WriteLock(WriteLock&& other) noexcept;
    WriteLock& operator=(WriteLock&&) = delete;
    ~WriteLock();

private:
    int descriptor_ = -1;
};

/// Keeps writers out while somebody reads who may not use the log. Nothing where there is no lock's file: it is never
/// made by a reader.
class ReadHold {
public:
    /// Throws LedgerError, refused, where somebody writes.
    explicit ReadHold(const std::string& ledger_file);
    ReadHold(ReadHold&& other) noexcept;
    ReadHold& operator=(ReadHold&&) = delete;
    ~ReadHold();

private:
    int descriptor_;
};

class EntryWriter;

/// A statement that is kept for the next time; reset when the lease ends. One lease of a text at a time.
class Lease {
public:
    explicit Lease(Statement& statement) : statement_(statement) {}
    Lease(const Lease&) = delete;
    Lease& operator=(const Lease&) = delete;
    ~Lease() { statement_.reset(); }

    Statement* operator->() { return &statement_; }
    Statement& operator*() { return statement_; }

private:
    Statement& statement_;
};

class Connection {
public:
    using Hold = std::variant<std::monostate, WriteLock, ReadHold>;

    /// Guards the connection and locks it down. `clock` is null where nothing is written.
    Connection(std::unique_ptr<Database> database, Hold hold, const Clock* clock);
    Connection(const Connection&) = delete;
    Connection& operator=(const Connection&) = delete;
    ~Connection();

    [[nodiscard]] const std::string& file() const { return database_->file(); }

    /// For reading: totals that wait to be written are written first.
    [[nodiscard]] Database& books();
    /// `sql` is a literal: it is known again by its address.
    [[nodiscard]] Lease ask(const char* sql);
    /// The same for what needs no totals: those that wait go on waiting.
    [[nodiscard]] Lease ask_entries(const char* sql);

    /// Begins a transaction. Throws LedgerError, refused: the store is open for reading, or is posting already.
    void begin();
    void commit();
    void undo() noexcept;
    [[nodiscard]] bool is_in_transaction() const { return database_->is_in_transaction(); }
    /// Of the transaction.
    [[nodiscard]] EntryWriter& entry_writer() { return *writer_; }
    [[nodiscard]] const Clock& clock() const { return *clock_; }
    /// The first time that an entry was written while the clock was behind the newest one.
    [[nodiscard]] std::optional<ClockLag> clock_lag() const;

    [[noreturn]] void refuse(const std::string& text) const;
    [[noreturn]] void give_up(const std::string& text) const;

private:
    // Let go after the file is closed.
    Hold hold_;
    std::unique_ptr<Database> database_;
    const Clock* clock_;
    std::unordered_map<const char*, Statement> kept_;
    std::unique_ptr<EntryWriter> writer_;
};

/// All that is done while it lives happens when commit() returns, or not at all.
class Transaction {
public:
    explicit Transaction(Connection& connection) : connection_(connection) { connection_.begin(); }
    Transaction(const Transaction&) = delete;
    Transaction& operator=(const Transaction&) = delete;
    ~Transaction() {
        if (is_open_) connection_.undo();
    }

    void commit() {
        connection_.commit();
        is_open_ = false;
    }

private:
    Connection& connection_;
    bool is_open_ = true;
};

}  // namespace flutebook::ledger
