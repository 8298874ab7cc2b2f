#include "ledger/store/database.hpp"

#include <SQLiteCpp/Column.h>
#include <SQLiteCpp/Database.h>
#include <SQLiteCpp/Statement.h>
#include <fmt/format.h>
#include <sqlite3.h>

#include <array>
#include <cerrno>
#include <cstring>
#include <utility>

namespace flutebook::ledger {

namespace {

// Strict tables came with this version.
constexpr int oldest_library = 3037000;
constexpr int patience_ms = 5000;
// A million rows are posted within this much memory: 16 MiB of pages. More makes it no faster.
constexpr const char* writer_cache = "PRAGMA cache_size = -16384; PRAGMA journal_size_limit = 67108864";

[[noreturn]] void refuse(const std::string& line) {
    throw LedgerError(LedgerError::Kind::refused, line);
}
[[noreturn]] void give_up(const std::string& line) {
    throw LedgerError(LedgerError::Kind::unfit, line);
}

bool is_out_of_space(int code, int system_code) {
    const bool is_input_output = (code & 0xff) == SQLITE_IOERR;
    return (code & 0xff) == SQLITE_FULL || code == SQLITE_IOERR_SHMSIZE || (is_input_output && system_code == ENOSPC);
}

// What the library said, as a sentence with what to do. `connection` may be null.
[[noreturn]] void translate(const std::string& file, const SQLite::Exception& error, sqlite3* connection) {
    const int system_code = connection == nullptr ? 0 : sqlite3_system_errno(connection);
    const int code = error.getExtendedErrorCode() > 0 ? error.getExtendedErrorCode() : error.getErrorCode();
    if (is_out_of_space(code, system_code))
        give_up(file +
                ": no space is left on the disk: nothing of the unfinished write was kept; make room and do it again");
    switch (code & 0xff) {
        case SQLITE_CORRUPT:
        case SQLITE_NOTADB:
            give_up(
                fmt::format("{}: the file is damaged: {}; keep it, restore a verified backup, and post again what "
                            "came after it",
                            file, error.what()));
        case SQLITE_IOERR:
            give_up(
                fmt::format("{}: the disk failed: {}; nothing of the unfinished write was kept; check the disk and its "
                            "room, and do it again",
                            file, error.what()));
        case SQLITE_BUSY:
        case SQLITE_LOCKED:
            refuse(file +
                   ": another program holds the file: it did not release the file within 5 s; close that program and "
                   "try again");
        case SQLITE_READONLY:
            if (code == SQLITE_READONLY_ROLLBACK || code == SQLITE_READONLY_RECOVERY)
                give_up(file +
                        ": a write to it was interrupted and must be undone before it can be read; run `flutebook "
                        "verify` as a user who may write to the file and its folder");
            [[fallthrough]];
        case SQLITE_PERM:
            give_up(file + ": cannot be written: the file or its folder is read-only; allow writing to both");
        case SQLITE_CANTOPEN:
            give_up(fmt::format("{}: cannot be opened: {}; check that the file and its folder can be read and written",
                                file, system_code != 0 ? std::strerror(system_code) : error.what()));
        case SQLITE_AUTH:
            refuse(file +
                   ": a ledger does not allow this: what was posted, and how it is kept, is never changed; add a "
                   "reversal instead");
        case SQLITE_CONSTRAINT:
            refuse(fmt::format("{}: the ledger refuses it: {}; nothing was kept", file, error.what()));
        default:
            give_up(fmt::format("{}: the database failed: {}{}; nothing of the unfinished write was kept", file,
                                error.what(),
                                system_code != 0 ? fmt::format(" ({})", std::strerror(system_code)) : ""));
    }
}

bool is_one_of(const char* name, std::initializer_list<const char*> names) {
    for (const char* one : names)
        if (name != nullptr && std::strcmp(name, one) == 0) return true;
    return false;
}

// Asked while a statement is compiled. What is neither a read nor an addition is refused; only the monthly totals may
// be changed, since they grow.
int allow(void*, int action, const char* first, const char* second, const char*, const char*) {
    switch (action) {
        case SQLITE_SELECT:
        case SQLITE_READ:
        case SQLITE_TRANSACTION:
        case SQLITE_RECURSIVE:
            return SQLITE_OK;
        case SQLITE_FUNCTION:
            return is_one_of(second, {"load_extension"}) ? SQLITE_DENY : SQLITE_OK;
        case SQLITE_INSERT:
            return std::strncmp(first, "sqlite_", 7) == 0 ? SQLITE_DENY : SQLITE_OK;
        case SQLITE_UPDATE:
            return is_one_of(first, {"month_flow", "month_detail", "month_expected"}) ? SQLITE_OK : SQLITE_DENY;
        case SQLITE_PRAGMA:
            return is_one_of(first, {"integrity_check", "foreign_key_check"}) ? SQLITE_OK : SQLITE_DENY;
        default:
            return SQLITE_DENY;
    }
}

int flags_of(Database::Access access) {
    switch (access) {
        case Database::Access::reading:
            return SQLITE_OPEN_READONLY | SQLITE_OPEN_NOMUTEX;
        case Database::Access::frozen:
            return SQLITE_OPEN_READONLY | SQLITE_OPEN_NOMUTEX | SQLITE_OPEN_URI;
        case Database::Access::writing:
            return SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE | SQLITE_OPEN_NOMUTEX;
        case Database::Access::memory:
            return SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE | SQLITE_OPEN_NOMUTEX | SQLITE_OPEN_MEMORY;
    }
    return 0;
}

// A file name with what a URI gives a meaning of its own written as %XX.
std::string frozen_uri(const std::string& file) {
    std::string uri = file.front() == '/' ? "file:" : "file:./";
    for (const char sign : file)
        if (is_one_of(std::string(1, sign).c_str(), {"%", "?", "#"}))
            uri += fmt::format("%{:02X}", static_cast<unsigned char>(sign));
        else
            uri += sign;
    return uri + "?immutable=1";
}

}  // namespace

Statement::Statement(Database& database, const char* sql) : database_(&database) {
    try {
        statement_ = std::make_unique<SQLite::Statement>(*database.connection_, sql);
    } catch (const SQLite::Exception& error) {
        translate(database.file_, error, database.connection_->getHandle());
    }
}

Statement::Statement(Statement&&) noexcept = default;
Statement& Statement::operator=(Statement&&) noexcept = default;
Statement::~Statement() = default;

Statement& Statement::bind(int parameter, std::int64_t value) {
    statement_->bind(parameter, value);
    return *this;
}
Statement& Statement::bind(int parameter, const std::string& text) {
    statement_->bindNoCopy(parameter, text);
    return *this;
}
Statement& Statement::bind_bytes(int parameter, std::string_view bytes) {
    // An address even for no bytes: without one it would be nothing instead of an empty row of bytes.
    statement_->bindNoCopy(parameter, static_cast<const void*>(bytes.empty() ? "" : bytes.data()),
                           static_cast<int>(bytes.size()));
    return *this;
}
Statement& Statement::bind_nothing(int parameter) {
    statement_->bind(parameter);
    return *this;
}

bool Statement::step() {
    try {
        return statement_->executeStep();
    } catch (const SQLite::Exception& error) {
        statement_->tryReset();
        translate(database_->file_, error, database_->connection_->getHandle());
    }
}

void Statement::run() {
    while (step()) continue;
    reset();
}

void Statement::reset() noexcept {
    statement_->tryReset();
}

std::int64_t Statement::number(int column) const {
    return statement_->getColumn(column).getInt64();
}
std::string Statement::text(int column) const {
    return std::string(view(column));
}
std::string_view Statement::view(int column) const {
    const auto value = statement_->getColumn(column);
    const auto* bytes = static_cast<const char*>(value.getBlob());
    return {bytes == nullptr ? "" : bytes, static_cast<std::size_t>(value.getBytes())};
}
bool Statement::is_nothing(int column) const {
    return statement_->getColumn(column).isNull();
}

Database::Database(const std::string& file, Access access) : file_(file), access_(access) {
    if (sqlite3_libversion_number() < oldest_library)
        give_up(fmt::format("{}: the SQLite library is too old: found {}; install 3.37 or newer", file,
                            sqlite3_libversion()));
    const std::string name = access == Access::memory ? ":memory:" : access == Access::frozen ? frozen_uri(file) : file;
    try {
        connection_ = std::make_unique<SQLite::Database>(name, flags_of(access), patience_ms);
    } catch (const SQLite::Exception& error) {
        translate(file_, error, nullptr);
    }
    if (access == Access::writing && sqlite3_db_readonly(connection_->getHandle(), "main") == 1)
        give_up(file_ + ": cannot be written: the file is read-only; allow writing to it and its folder");
}

Database::~Database() = default;

void Database::run(const char* sql) {
    try {
        connection_->exec(sql);
    } catch (const SQLite::Exception& error) {
        translate(file_, error, connection_->getHandle());
    }
}

std::int64_t Database::number(const char* sql) {
    Statement statement(*this, sql);
    return statement.step() ? statement.number(0) : 0;
}

std::string Database::text(const char* sql) {
    Statement statement(*this, sql);
    return statement.step() ? statement.text(0) : std::string();
}

bool Database::is_in_transaction() const {
    return sqlite3_get_autocommit(connection_->getHandle()) == 0;
}

void Database::undo() noexcept {
    if (is_in_transaction()) connection_->tryExec("ROLLBACK");
}

void Database::expect_setting(const std::string& name, const std::string& wanted) {
    const auto found = text(("PRAGMA " + name).c_str());
    if (found != wanted)
        give_up(
            fmt::format("{}: the database ignores `{}`: found {}, expected {}; check what library the "
                        "program runs with",
                        file_, name, found, wanted));
}

void Database::set_guards() {
    run("PRAGMA foreign_keys = ON; PRAGMA recursive_triggers = ON; PRAGMA trusted_schema = OFF; "
        "PRAGMA cell_size_check = ON; PRAGMA synchronous = FULL");
    expect_setting("foreign_keys", "1");
    expect_setting("recursive_triggers", "1");
    expect_setting("trusted_schema", "0");
    expect_setting("cell_size_check", "1");
    expect_setting("synchronous", "2");
    if (is_writable()) run(writer_cache);
    if (access_ == Access::writing) {
        run("PRAGMA journal_mode = WAL");
        expect_setting("journal_mode", "wal");
        keep_log_file();
    }
    if (!is_writable()) {
        run("PRAGMA query_only = ON");
        expect_setting("query_only", "1");
    }
    struct Switch {
        int code, wanted;
        const char* name;
    };
    const std::array<Switch, 5> switches = {{
        {SQLITE_DBCONFIG_DEFENSIVE, 1, "defensive"},
        {SQLITE_DBCONFIG_ENABLE_TRIGGER, 1, "triggers"},
        {SQLITE_DBCONFIG_DQS_DML, 0, "double-quoted texts"},
        {SQLITE_DBCONFIG_DQS_DDL, 0, "double-quoted texts in tables"},
        // Only the one writer may move what is in the log into the file.
        {SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, is_writable() ? 0 : 1, "no checkpoint on close"},
    }};
    for (const auto& one : switches) {
        int found = -1;
        sqlite3_db_config(connection_->getHandle(), one.code, one.wanted, &found);
        if (found != one.wanted) give_up(fmt::format("{}: the database ignores `{}`", file_, one.name));
    }
}

// The log's file stays when the last connection is closed: a reader of another user need not make one.
void Database::keep_log_file() {
    int keep = 1;
    sqlite3_file_control(connection_->getHandle(), "main", SQLITE_FCNTL_PERSIST_WAL, &keep);
}

void Database::lock_down() {
    sqlite3_set_authorizer(connection_->getHandle(), allow, nullptr);
}

void Database::copy_to(const std::string& file) {
    sqlite3* target = nullptr;
    const int opened = sqlite3_open_v2(file.c_str(), &target, SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE, nullptr);
    const std::unique_ptr<sqlite3, decltype(&sqlite3_close)> closer(target, sqlite3_close);
    try {
        if (opened != SQLITE_OK) throw SQLite::Exception(target, opened);
        sqlite3_backup* copy = sqlite3_backup_init(target, "main", connection_->getHandle(), "main");
        if (copy == nullptr) throw SQLite::Exception(target, sqlite3_errcode(target));
        // In one step, so that it is one snapshot; a writer does not wait for it.
        const int stepped = sqlite3_backup_step(copy, -1);
        const int finished = sqlite3_backup_finish(copy);
        if (stepped != SQLITE_DONE) throw SQLite::Exception(target, stepped);
        if (finished != SQLITE_OK) throw SQLite::Exception(target, finished);
        // As every ledger is: its first write needs no journal that a killed process could leave. The log is emptied
        // into the file when it is closed, so there is nothing beside it that a copy could lose.
        const int settled = sqlite3_exec(target, "PRAGMA journal_mode = WAL", nullptr, nullptr, nullptr);
        if (settled != SQLITE_OK) throw SQLite::Exception(target, settled);
    } catch (const SQLite::Exception& error) {
        translate(file, error, target);
    }
}

}  // namespace flutebook::ledger
