#include "ledger/store/store.hpp"

#include <unistd.h>

#include <filesystem>
#include <system_error>
#include <utility>

#include "ledger/store/connection.hpp"
#include "ledger/store/migrations.hpp"

namespace flutebook::ledger {

namespace {

namespace fs = std::filesystem;

[[noreturn]] void refuse(const std::string& line) {
    throw LedgerError(LedgerError::Kind::refused, line);
}

bool is_there(const std::string& file) {
    std::error_code ignored;
    return fs::exists(file, ignored);
}

void expect_file(const std::string& file) {
    std::error_code ignored;
    if (!is_there(file))
        refuse(file + ": there is no such ledger: nothing was saved or posted yet; post something first");
    if (!fs::is_regular_file(file, ignored))
        throw LedgerError(LedgerError::Kind::unfit, file + ": is no ledger: no plain file; name another");
}

// Where the file cannot be written, there is no log beside it while it is read, so the file must be all there is.
bool is_frozen(const std::string& file) {
    std::error_code ignored;
    const auto folder = fs::path(file).has_parent_path() ? fs::path(file).parent_path() : fs::path(".");
    const bool has_log = is_there(file + "-wal") && fs::file_size(file + "-wal", ignored) > 0;
    return access(folder.c_str(), W_OK) != 0 && !has_log;
}

std::unique_ptr<Database> open_guarded(const std::string& file, Database::Access access) {
    auto database = std::make_unique<Database>(file, access);
    // Before anything is written: a file of another program is left as it is.
    static_cast<void>(fitness(*database));
    database->set_guards();
    return database;
}

}  // namespace

Store::Store(std::unique_ptr<Connection> cabinet) : cabinet_(std::move(cabinet)) {}
Store::Store(Store&&) noexcept = default;
Store& Store::operator=(Store&&) noexcept = default;
Store::~Store() = default;

const std::string& Store::file() const {
    return cabinet_->file();
}

Store Store::open_for_writing(const std::string& file, IfMissing missing, const Clock& clock) {
    if (missing == IfMissing::refuse || is_there(file)) expect_file(file);
    WriteLock lock(file);
    auto database = open_guarded(file, Database::Access::writing);
    if (missing == IfMissing::refuse && fitness(*database) == Fitness::empty)
        refuse(file + ": holds no ledger yet: nothing was saved or posted; post something first");
    migrate(*database);
    const auto altered = altered_tables(*database);
    if (!altered.empty())
        throw LedgerError(LedgerError::Kind::unfit,
                          file + ": its tables were altered: " + altered + "; restore a verified backup");
    return Store(std::make_unique<Connection>(std::move(database), std::move(lock), &clock));
}

Store Store::open_for_reading(const std::string& file) {
    expect_file(file);
    const auto access = is_frozen(file) ? Database::Access::frozen : Database::Access::reading;
    auto database = open_guarded(file, access);
    switch (fitness(*database)) {
        case Fitness::empty:
            refuse(file + ": holds no ledger yet: nothing was saved or posted; post something first");
        case Fitness::older:
            database.reset();
            static_cast<void>(open_for_writing(file, IfMissing::refuse));
            database = open_guarded(file, access);
            break;
        case Fitness::current:
            break;
    }
    return Store(std::make_unique<Connection>(std::move(database), std::nullopt, nullptr));
}

Store Store::in_memory(const Clock& clock) {
    auto database = std::make_unique<Database>("a ledger in memory", Database::Access::memory);
    database->set_guards();
    migrate(*database);
    return Store(std::make_unique<Connection>(std::move(database), std::nullopt, &clock));
}

Snapshot::Snapshot(const Store& store) : cabinet_(store.cabinet()), is_held_(!cabinet_.is_in_transaction()) {
    if (!is_held_) return;
    cabinet_.books().run("BEGIN");
    // The snapshot is taken by the first read.
    static_cast<void>(cabinet_.books().number("SELECT max(id) FROM name"));
}

Snapshot::~Snapshot() {
    if (is_held_) cabinet_.books().undo();
}

}  // namespace flutebook::ledger
