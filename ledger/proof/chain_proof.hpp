// Every entry read and hashed again, in their order; what they moved is summed on the way.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "ledger/proof/findings.hpp"
#include "ledger/proof/totals_proof.hpp"
#include "ledger/store/database.hpp"
#include "ledger/values/sha256.hpp"

namespace flutebook::ledger::proof {

/// An entry that closes a month, as it says itself.
struct Closing {
    std::int64_t entry, month;
    std::string content;
};

/// An entry that says what was saved.
struct SavedReceipt {
    std::int64_t entry;
    std::string content;
};

struct ChainRead {
    std::int64_t entries = 0;
    Hash head{};
    std::optional<std::int64_t> kept_at;
    Recount recount;
    std::vector<Closing> closings;
    std::vector<SavedReceipt> saved;
};

/// Which entries a partial proof reads: those dated in a month, and those numbered from `first` to `last`.
struct ChainScope {
    std::int64_t month, first, last;
};

/// Numbers without a gap, hashes, times that never fall, days that were open, lines that belong to an entry, mirrors
/// that are exact. What is wrong is found, never thrown: where the file cannot be read further, that is the last.
[[nodiscard]] ChainRead prove_chain(Database& books, const NameList& names, const std::optional<Hash>& kept,
                                    Findings& findings);

/// The same of some entries, each held against the stored hash of the one before it: for who shows or closes a month
/// and cannot read the whole ledger. Mirrors are left out.
[[nodiscard]] ChainRead prove_part_of_chain(Database& books, const NameList& names, const ChainScope& scope,
                                            Findings& findings);

}  // namespace flutebook::ledger::proof
