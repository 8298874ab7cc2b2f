#include "ledger/store/store.hpp"

#include <fmt/format.h>

#include <utility>

#include "ledger/store/connection.hpp"
#include "ledger/store/ledger_files.hpp"
#include "ledger/store/migrations.hpp"

namespace flutebook::ledger {

namespace {

[[noreturn]] void refuse_to_open(const std::string& line) {
    throw LedgerError(LedgerError::Kind::refused, line);
}

std::unique_ptr<Database> open_guarded(const std::string& file, Database::Access access) {
    auto database = std::make_unique<Database>(file, access);
    // Before anything is written: a file of another program is left as it is.
    static_cast<void>(fitness(*database));
    database->set_guards();
    return database;
}

// A write of a process that was killed left its journal: a reader cannot undo it, a writer does by opening the file.
void undo_broken_write(const std::string& file) {
    if (!may_write(file))
        throw LedgerError(LedgerError::Kind::unfit,
                          fmt::format("{}: a write to it was interrupted, and {}-journal holds what must be undone "
                                      "before it can be read; run `flutebook verify` as a user who may write to both",
                                      file, file));
    static_cast<void>(Store::open_for_writing(file, IfMissing::create));
}

}  // namespace

Store::Store(std::unique_ptr<Connection> connection) : connection_(std::move(connection)) {}
Store::Store(Store&&) noexcept = default;
Store& Store::operator=(Store&&) noexcept = default;
Store::~Store() = default;

const std::string& Store::file() const {
    return connection_->file();
}

std::optional<ClockLag> Store::clock_lag() const {
    return connection_->clock_lag();
}

Store Store::open_for_writing(const std::string& name, IfMissing missing, const Clock& clock) {
    const auto file = file_behind(name);
    if (missing == IfMissing::refuse || is_there(file)) expect_ledger_file(file);
    WriteLock lock(file);
    if (!is_there(file)) create_ledger_file(file);
    expect_side_files_writable(file);
    auto database = open_guarded(file, Database::Access::writing);
    share_side_files(file);
    if (missing == IfMissing::refuse && fitness(*database) == Fitness::empty)
        refuse_to_open(file + ": holds no ledger yet: nothing was saved or posted; post something first");
    migrate(*database);
    const auto altered = altered_tables(*database);
    if (!altered.empty())
        throw LedgerError(LedgerError::Kind::unfit,
                          file + ": its tables were altered: " + altered + "; restore a verified backup");
    return Store(std::make_unique<Connection>(std::move(database), std::move(lock), &clock));
}

Store Store::open_for_reading(const std::string& name) {
    const auto file = file_behind(name);
    expect_ledger_file(file);
    if (has_broken_write(file)) undo_broken_write(file);
    Connection::Hold hold;
    const auto way = way_to_read(file);
    if (way == WayToRead::alone) hold.emplace<ReadHold>(file);
    const auto access = way == WayToRead::alone ? Database::Access::frozen : Database::Access::reading;
    auto database = open_guarded(file, access);
    switch (fitness(*database)) {
        case Fitness::empty:
            refuse_to_open(file + ": holds no ledger yet: nothing was saved or posted; post something first");
        case Fitness::older:
            database.reset();
            hold.emplace<std::monostate>();
            static_cast<void>(open_for_writing(file, IfMissing::refuse));
            database = open_guarded(file, access);
            break;
        case Fitness::current:
            break;
    }
    share_side_files(file);
    return Store(std::make_unique<Connection>(std::move(database), std::move(hold), nullptr));
}

Store Store::in_memory(const Clock& clock) {
    auto database = std::make_unique<Database>("a ledger in memory", Database::Access::memory);
    database->set_guards();
    migrate(*database);
    return Store(std::make_unique<Connection>(std::move(database), Connection::Hold(), &clock));
}

Snapshot::Snapshot(const Store& store) : connection_(store.connection()), is_held_(!connection_.is_in_transaction()) {
    if (!is_held_) return;
    connection_.books().run("BEGIN");
    // The snapshot is taken by the first read.
    static_cast<void>(connection_.books().number("SELECT max(id) FROM name"));
}

Snapshot::~Snapshot() {
    if (is_held_) connection_.books().undo();
}

}  // namespace flutebook::ledger
