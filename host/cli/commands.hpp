// The list of the program's commands, and the function that runs the program.
#pragma once

#include "host/command_line/command.hpp"

namespace flutebook::cli {

// Each adds one command and its subcommands. Each is defined in the source file of that name; close, reverse, entries,
// verify and backup are in ledger_commands.cpp.
void add_quote(Command& program);
void add_order(Command& program);
void add_post(Command& program);
void add_month(Command& program);
void add_close(Command& program);
void add_reverse(Command& program);
void add_entries(Command& program);
void add_verify(Command& program);
void add_backup(Command& program);
void add_style(Command& program);
void add_plugin(Command& program);
void add_serve(Command& program);
void add_user(Command& program);

// Subcommands of `quote`, `plugin` and `style` that have their own source files.
void add_quote_list(Command& quote);
void add_quote_show(Command& quote);
void add_quote_copy(Command& quote);
void add_quote_mark(Command& quote);
void add_quote_recheck(Command& quote);
void add_plugin_check(Command& plugin);
void add_style_check(Command& style);
void add_plugin_new(Command& plugin);

/// Runs the program and returns its exit code. Throws InputError and ModelError where the plant's files or its plugins
/// cannot be used, LedgerError where the ledger cannot.
[[nodiscard]] int run(int count, const char* const* words);

}  // namespace flutebook::cli
