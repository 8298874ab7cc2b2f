// The trim of the webs that were run, counted from the ledger: of each board, and of the plant.
#pragma once

#include <map>
#include <set>
#include <string>

#include "host/plant/trim_record.hpp"
#include "ledger/store/store.hpp"

namespace flutebook::trim_history {

/// The runs of some months: board by board, and of all boards.
struct TrimOfMonths {
    std::map<std::string, plant::TrimRecord> boards;  // by code
    plant::TrimRecord plant;
};

/// Adds up the runs of months in a ledger, each of which it reads once. It refers to nothing: one thread at a time.
class TrimReader {
public:
    /// Of the months from `first` to `last`. Throws LedgerError, unfit, where a row can no longer be read.
    [[nodiscard]] TrimOfMonths of(const ledger::Store& store, ledger::Month first, ledger::Month last);

private:
    struct Runs {
        plant::TrimRecord record;  // without its orders, which may run in two months
        std::set<std::string> orders;
    };
    using RunsOfBoards = std::map<std::string, Runs>;

    [[nodiscard]] static RunsOfBoards runs_in(const ledger::Store& store, ledger::Month month);

    std::map<ledger::Month, RunsOfBoards> months_;
};

/// What the ledger in a file says of a board's share: its own where it has runs enough in the twelve whole months
/// before the day, else that of all boards. The file is opened when it is first asked, as one moment, and closed again;
/// a file that is not there has no runs. The same question has the same answer, whatever is posted meanwhile.
[[nodiscard]] plant::TrimSource trim_source(const std::string& ledger_file);

/// The same for a process that outlives many postings: read again once the ledger has grown.
[[nodiscard]] plant::TrimSource newest_trim_source(const std::string& ledger_file);

}  // namespace flutebook::trim_history
