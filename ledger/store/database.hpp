// The database: a connection and its statements. No other code of ours includes SQLiteCpp or SQLite.
//
// Every failure is thrown as a LedgerError that says what to do. The database may have ended the transaction by itself
// then (a full disk does): undo() settles that either way. One thread at a time.
#pragma once

#include <cstdint>
#include <memory>
#include <string>
#include <string_view>

#include "ledger/values/error.hpp"

namespace SQLite {
class Database;
class Statement;
}  // namespace SQLite

namespace flutebook::ledger {

class Database;

/// A prepared statement; its database outlives it. Parameters count from 1, columns from 0. While it stands on a row
/// it holds a snapshot of the file: reset it soon.
class Statement {
public:
    Statement(Database& database, const char* sql);
    Statement(Statement&&) noexcept;
    Statement& operator=(Statement&&) noexcept;
    ~Statement();

    Statement& bind(int parameter, std::int64_t value);
    /// Not copied: must stay as it is until the next reset.
    Statement& bind(int parameter, const std::string& text);
    Statement& bind(int parameter, std::string&&) = delete;
    Statement& bind_bytes(int parameter, std::string_view bytes);
    Statement& bind_nothing(int parameter);

    /// Whether there is a next row, which it now stands on.
    bool step();
    /// For statements that answer nothing: to the end, ready to be used again.
    void run();
    void reset() noexcept;

    [[nodiscard]] std::int64_t number(int column) const;
    [[nodiscard]] std::string text(int column) const;
    /// The same, and bytes too, without a copy; until the next step or reset.
    [[nodiscard]] std::string_view view(int column) const;
    [[nodiscard]] bool is_nothing(int column) const;

private:
    const Database* database_;
    std::unique_ptr<SQLite::Statement> statement_;
};

class Database {
public:
    enum class Access {
        reading,  // while another process may write
        frozen,   // a file in a place that cannot be written to
        writing,  // creates the file where it is missing
        memory,   // no file at all
    };

    Database(const std::string& file, Access access);
    Database(const Database&) = delete;
    Database& operator=(const Database&) = delete;
    ~Database();

    [[nodiscard]] const std::string& file() const { return file_; }
    [[nodiscard]] Access access() const { return access_; }
    [[nodiscard]] bool is_writable() const { return access_ == Access::writing || access_ == Access::memory; }

    /// One or more statements that answer nothing.
    void run(const char* sql);
    /// First column of the first row.
    [[nodiscard]] std::int64_t number(const char* sql);
    [[nodiscard]] std::string text(const char* sql);

    [[nodiscard]] bool is_in_transaction() const;
    /// Ends the transaction as if it had never begun, if there still is one.
    void undo() noexcept;

    /// Sets what keeps the file safe and reads it back: how commits reach the disk, foreign keys, what triggers may
    /// do. These belong to the connection, not to the file, so each connection must. Throws where one does not hold.
    void set_guards();
    /// From now on the connection itself refuses to change or delete what was posted, to change tables and triggers,
    /// and to loosen the guards.
    void lock_down();

    /// Copies the whole of it, as it is now, into a new file.
    void copy_to(const std::string& file);

private:
    friend class Statement;

    void keep_log_file();
    void expect_setting(const std::string& name, const std::string& wanted);

    std::string file_;
    Access access_;
    std::unique_ptr<SQLite::Database> connection_;
};

}  // namespace flutebook::ledger
