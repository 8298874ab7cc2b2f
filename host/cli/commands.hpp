// The commands of the program, and the program that runs them.
#pragma once

#include "host/cli/command.hpp"

namespace flutebook::cli {

// Each adds one command with the commands under it. They are defined in the source that is named after the command;
// close, reverse, verify and backup are defined in ledger_commands.cpp.
void add_quote(Command& program);
void add_order(Command& program);
void add_post(Command& program);
void add_month(Command& program);
void add_close(Command& program);
void add_reverse(Command& program);
void add_verify(Command& program);
void add_backup(Command& program);
void add_plugin(Command& program);

// Commands under `quote` and `plugin` that have sources of their own.
void add_quote_show(Command& quote);
void add_quote_recheck(Command& quote);
void add_plugin_check(Command& plugin);
void add_plugin_new(Command& plugin);

/// Runs the program; the answer is its exit code. Throws InputError and ModelError where the plant or its plugins are
/// not fit to start with, LedgerError where the ledger is not.
[[nodiscard]] int run(int count, const char* const* words);

}  // namespace flutebook::cli
