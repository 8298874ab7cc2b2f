// The files that a ledger consists of, in the file system: which file a name leads to, who owns it, and what may not be
// in its place. FILE, FILE-wal and FILE-shm (the log and its index), FILE-journal (only where a write was broken off
// before there was a log), FILE.lock.
//
// Several people may share a ledger: what one of them creates must be writable by the others.
#pragma once

#include <string>

namespace flutebook::ledger {

/// The file that `name` leads to: beside it stand its log and its lock. Throws LedgerError, unfit, where the name is a
/// symbolic link that leads nowhere.
[[nodiscard]] std::string file_behind(const std::string& name);

[[nodiscard]] bool is_there(const std::string& file);

/// "." where the name has no folder.
[[nodiscard]] std::string folder_of(const std::string& file);

/// Throws LedgerError: refused where there is no file, or where it has a second name (a hard link: each name would have
/// a log of its own, and entries would be lost); unfit where it is no plain file.
void expect_ledger_file(const std::string& file);

/// An empty file with the rights that the umask and the folder give to a new one.
void create_ledger_file(const std::string& file);

/// Gives the log, its index and the lock the group and the rights of the ledger, where this process owns them.
void share_side_files(const std::string& file);

/// Throws LedgerError, unfit, where the log or its index was left by somebody else and cannot be written.
void expect_side_files_writable(const std::string& file);

/// Whether a write was broken off that must be undone before the file can be read.
[[nodiscard]] bool has_broken_write(const std::string& file);

enum class WayToRead {
    shared,  // through the log and its index, while others may write
    alone,   // the file as it is: its log and index are not there, and may not be made
};

/// A reader makes no log or index that those who write could not write to.
[[nodiscard]] WayToRead way_to_read(const std::string& file);

/// Whether this process may write to the file and to its folder.
[[nodiscard]] bool may_write(const std::string& file);

}  // namespace flutebook::ledger
