// The only code that adds entries: it numbers them, chains them, and adds them to the totals of their month.
#pragma once

#include <chrono>
#include <cstdint>
#include <optional>
#include <string>

#include "ledger/store/clock.hpp"
#include "ledger/store/database.hpp"
#include "ledger/store/names.hpp"
#include "ledger/values/entry.hpp"
#include "ledger/writing/chain.hpp"
#include "ledger/writing/totals.hpp"

namespace flutebook::ledger {

/// What every entry of one transaction has in common.
struct Actor {
    std::string who;
    std::chrono::sys_seconds when;
    std::optional<std::chrono::sys_seconds> clock = {};  // the machine's own time, where that was behind `when`
};

/// Belongs to a connection, and works within its transactions.
class EntryWriter {
public:
    explicit EntryWriter(Database& database);

    /// A transaction began: reads the end of the chain.
    void begin();
    /// Totals that wait, into their tables.
    void write_totals() { totals_.write(); }
    /// The transaction was undone.
    void forget();

    /// Adds a draft that was examined and is dated in an open month; answers with its number. `reverses` is 0, or the
    /// entry whose mirror it is.
    std::int64_t add(const Draft& draft, const Actor& actor, std::int64_t reverses = 0);

    /// Of the newest entry; zeros where there is none.
    [[nodiscard]] const Hash& head() const { return head_; }
    [[nodiscard]] Names& names() { return names_; }
    /// Who writes the next entry, and when: at `now`, or at the newest entry's time where a clock was set back since.
    [[nodiscard]] Actor actor(const std::string& who, std::chrono::sys_seconds now);
    /// The first time that the clock was behind.
    [[nodiscard]] const std::optional<ClockLag>& clock_lag() const { return lag_; }

private:
    void add_movements(const Draft& draft, std::int64_t number, const EntryKeys& keys);
    void add_expected(const Draft& draft, std::int64_t number, const EntryKeys& keys);
    void add_count(const Draft& draft, std::int64_t number);

    Names names_;
    Totals totals_;
    Statement newest_, entry_, movement_, expected_, count_;
    ChainText text_;
    std::int64_t number_ = 0;
    std::chrono::sys_seconds when_{};
    Hash head_{};
    std::optional<ClockLag> lag_;
};

}  // namespace flutebook::ledger
