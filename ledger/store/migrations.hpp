// The versions of a ledger's tables, and the migration from each to the next.
#pragma once

#include <span>

#include "ledger/store/database.hpp"

namespace flutebook::ledger {

/// The steps: `sql` makes version `version` out of the one before it. Text of schema/*.sql, in their order.
struct Migration {
    int version;
    const char* sql;
};
[[nodiscard]] std::span<const Migration> migrations();

/// What stands in a ledger's header: "FLUT".
inline constexpr int application = 0x464C5554;

enum class Fitness {
    empty,  // a new file, or one whose making was broken off
    older,  // to be migrated
    current,
};

/// Whether the file can be worked with. Throws LedgerError, unfit, where it is another program's database or of a
/// newer version.
[[nodiscard]] Fitness fitness(Database& database);

/// Brings the file to the newest version, each step whole or not at all. Before the connection is locked down.
void migrate(Database& database, std::span<const Migration> steps = migrations());

/// How the tables and triggers of the file differ from what this version makes: one sentence, or empty.
[[nodiscard]] std::string altered_tables(Database& database);

}  // namespace flutebook::ledger
