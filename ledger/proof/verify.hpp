// Verifies a whole ledger. It is written separately from the code that posts: it reads the tables and calculates
// everything again.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "ledger/store/store.hpp"

namespace flutebook::ledger {

/// Something that is not as it must be: a finished sentence, and the entry where it first shows.
struct Finding {
    std::optional<std::int64_t> entry;
    std::string text;
};

struct Proof {
    std::int64_t entries;  // read and re-hashed
    std::string head;      // hash of the newest, in hex; empty where there is none
    /// The entry whose hash was the kept head.
    std::optional<std::int64_t> kept_at;
    /// What is wrong, the first bad entry first; no more than a hundred.
    std::vector<Finding> findings;

    [[nodiscard]] bool holds() const { return findings.empty(); }
};

/// Re-hashes every entry, re-sums every total, checks links, seals and their stocks, saved quotes and orders, and the
/// file itself. With a head that was kept elsewhere (64 hex digits, any case; else LedgerError, refused) it also
/// notices a cut tail, a rewritten past and an old copy. Reads a snapshot: posting may go on. Does not throw for
/// damage: that is a finding.
[[nodiscard]] Proof verify(const Store& store, const std::optional<std::string>& kept_head = std::nullopt);

}  // namespace flutebook::ledger
