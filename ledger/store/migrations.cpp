#include "ledger/store/migrations.hpp"

#include <fmt/format.h>

#include <map>
#include <string>
#include <utility>

namespace flutebook::ledger {

namespace {

using Tables = std::map<std::pair<std::string, std::string>, std::string>;

Tables tables_of(Database& database) {
    Tables tables;
    Statement found(database,
                    "SELECT type, name, coalesce(sql, '') FROM sqlite_schema WHERE name NOT LIKE 'sqlite\\_%' "
                    "ESCAPE '\\'");
    while (found.step()) tables[{found.text(0), found.text(1)}] = found.text(2);
    return tables;
}

}  // namespace

Fitness fitness(Database& database) {
    const auto found_application = database.number("PRAGMA application_id");
    const auto version = database.number("PRAGMA user_version");
    const auto newest = migrations().back().version;
    if (found_application == 0 && version == 0 && database.number("SELECT count(*) FROM sqlite_schema") == 0)
        return Fitness::empty;
    if (found_application != application || version < 1)
        throw LedgerError(LedgerError::Kind::unfit,
                          database.file() + ": is not a ledger: a database of another program; name another file");
    if (version > newest)
        throw LedgerError(LedgerError::Kind::unfit,
                          fmt::format("{}: was written by a newer version of the program: found tables of version {}, "
                                      "this one knows {}; use the newer program",
                                      database.file(), version, newest));
    return version < newest ? Fitness::older : Fitness::current;
}

void migrate(Database& database, std::span<const Migration> steps) {
    const auto version = database.number("PRAGMA user_version");
    try {
        for (const auto& step : steps) {
            if (step.version <= version) continue;
            database.run("BEGIN IMMEDIATE");
            database.run(step.sql);
            database.run(
                fmt::format("PRAGMA application_id = {}; PRAGMA user_version = {}", application, step.version).c_str());
            database.run("COMMIT");
        }
    } catch (const LedgerError&) {
        database.undo();
        throw;
    }
}

std::string altered_tables(Database& database) {
    Database fresh("a new ledger", Database::Access::memory);
    migrate(fresh);
    const auto wanted = tables_of(fresh);
    const auto found = tables_of(database);
    for (const auto& [key, sql] : wanted) {
        const auto there = found.find(key);
        if (there == found.end()) return fmt::format("{} {} is missing", key.first, key.second);
        if (there->second != sql) return fmt::format("{} {} was changed", key.first, key.second);
    }
    for (const auto& [key, sql] : found)
        if (wanted.count(key) == 0) return fmt::format("{} {} does not belong there", key.first, key.second);
    return {};
}

}  // namespace flutebook::ledger
