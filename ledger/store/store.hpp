// A ledger's file, opened. What can be done with it is in headers of its own: posting.hpp, reversal.hpp, close.hpp,
// quotes.hpp write; month.hpp, entries.hpp, quotes.hpp read; verify.hpp and backup.hpp prove and copy.
//
// One process at a time may hold a ledger for writing (a lock on FILE.lock beside it says which); any number may read
// while it does. A store belongs to one thread at a time. Every read throws LedgerError, unfit, of a damaged file.
#pragma once

#include <memory>
#include <optional>
#include <string>

#include "ledger/store/clock.hpp"
#include "ledger/values/error.hpp"

namespace flutebook::ledger {

class Connection;

enum class IfMissing { refuse, create };

class Store {
public:
    /// Opens `file` for writing, brings it up to the newest version, and holds the lock until the store is gone.
    /// `clock` must outlive the store. Throws LedgerError: refused where the file is missing (and `create` was not
    /// asked) or another process writes; unfit where it is no ledger, of a newer version, damaged or not writable.
    [[nodiscard]] static Store open_for_writing(const std::string& file, IfMissing missing,
                                                const Clock& clock = machine_clock());

    /// Opens `file` for reading. A file of an older version is first brought up to the newest, which takes the lock
    /// for a moment. Throws LedgerError: refused where it is missing, unfit as above.
    [[nodiscard]] static Store open_for_reading(const std::string& file);

    /// An empty ledger that is never on disk, for reading and writing: what a plant has before its first document.
    [[nodiscard]] static Store in_memory(const Clock& clock = machine_clock());

    Store(Store&&) noexcept;
    Store& operator=(Store&&) noexcept;
    ~Store();

    [[nodiscard]] const std::string& file() const;

    /// That the clock is behind the newest entry: found when this store wrote an entry, which keeps both times.
    [[nodiscard]] std::optional<ClockLag> clock_lag() const;

    /// For the ledger's own sources.
    [[nodiscard]] Connection& connection() const { return *connection_; }

private:
    explicit Store(std::unique_ptr<Connection> connection);

    std::unique_ptr<Connection> connection_;
};

/// While it lives, every read of `store` sees the ledger as it was when the snapshot was taken, whatever other
/// processes post meanwhile. Not for a store that is posting: that one sees its own rows anyway. Keep it short: the
/// file grows while a snapshot is held.
class Snapshot {
public:
    explicit Snapshot(const Store& store);
    Snapshot(const Snapshot&) = delete;
    Snapshot& operator=(const Snapshot&) = delete;
    ~Snapshot();

private:
    Connection& connection_;
    bool is_held_;
};

}  // namespace flutebook::ledger
