// Posting: documents into the ledger, each once, all of them or none.
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <variant>
#include <vector>

#include "ledger/store/store.hpp"
#include "ledger/values/entry.hpp"
#include "ledger/writing/draft_check.hpp"

namespace flutebook::ledger {

class Transaction;

/// The draft is an entry now, once the posting is committed.
struct Posted {
    std::int64_t number;
};
/// The same row was posted before: skipped. That holds for a month that was closed since, too.
struct AlreadyPosted {
    std::int64_t number;
};
/// Refused: entry `number` has the same kind and ref, and other content.
struct KnownRef {
    std::int64_t number;
    std::string content;
};
/// Refused: the draft's month is closed; `last_closed` is the latest month that is.
struct MonthClosed {
    Month last_closed;
};
using Added = std::variant<Posted, AlreadyPosted, KnownRef, MonthClosed>;

[[nodiscard]] inline bool is_refusal(const Added& added) {
    return std::holds_alternative<KnownRef>(added) || std::holds_alternative<MonthClosed>(added);
}

/// What a commit acknowledges: it is on disk.
struct Receipt {
    std::int64_t posted = 0, skipped = 0;
    std::string head;  // hash of the newest entry, in hex
};

/// One transaction on a store that is open for writing. Drafts are written as they come, so memory stays flat
/// whatever their number; without commit() they are all undone when the posting is gone: that is a dry run. One
/// posting a store at a time. Reads of the same store see what was added so far.
class Posting {
public:
    /// `who` is written into every entry. Throws LedgerError.
    Posting(Store& store, std::string who);
    Posting(const Posting&) = delete;
    Posting& operator=(const Posting&) = delete;
    ~Posting();

    /// Adds one draft. After a refusal others may still be added, so that every bad row can be listed, but the
    /// posting can no longer be committed. Throws LedgerError: refused where the draft is no document (no ref, a date
    /// that does not exist, a movement to where it came from, a mass or an amount out of bounds, ...), unfit where
    /// the disk is full or the file damaged; all is undone then.
    Added add(const Draft& draft, DraftSource source = DraftSource::document);

    /// All on disk when it returns. Throws LedgerError: refused after a refusal, unfit where the disk is full;
    /// all is undone then.
    Receipt commit();

private:
    Added add_examined(const Draft& draft);

    Connection& connection_;
    std::string who_;
    std::unique_ptr<Transaction> transaction_;  // null when the posting has ended
    std::optional<Month> last_closed_;
    std::int64_t posted_ = 0, skipped_ = 0, refused_ = 0;
};

/// What became of each draft, in their order.
struct Batch {
    std::vector<Added> added;
    Receipt receipt;  // of nothing where any draft was refused
    [[nodiscard]] bool is_refused() const;
};

/// Posts all drafts, or none where any is refused.
[[nodiscard]] Batch post(Store& store, std::span<const Draft> drafts, const std::string& who);

/// What post() would answer; nothing is kept.
[[nodiscard]] Batch would_post(Store& store, std::span<const Draft> drafts, const std::string& who);

}  // namespace flutebook::ledger
