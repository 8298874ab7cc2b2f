// What a quote stands on, then and today: the plant's files, key by key, and the plugins.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "host/desk/differences.hpp"
#include "host/desk/workplace.hpp"
#include "ledger/quotes.hpp"

namespace flutebook::desk {

struct ChangedKey {
    std::string file;       // "papers.yaml"
    Difference difference;  // a key that is there today has its place in today's file
};

struct ChangedPlugin {
    struct File {
        std::string version, sha256;
        friend bool operator==(const File&, const File&) = default;
    };
    std::string id;
    std::optional<File> was, now;  // `was` alone: no longer loaded; `now` alone: loaded today
};

/// File by file, in the order that the plant is read. Notes, order and spacing are no change. Throws InputError (plant)
/// where a file of today cannot be read, LedgerError where a part of the quote is not there.
[[nodiscard]] std::vector<ChangedKey> changed_keys(const ledger::SavedQuote& quote, const std::string& folder);

/// In today's order of evaluation, then those that are gone.
[[nodiscard]] std::vector<ChangedPlugin> changed_plugins(const ledger::SavedQuote& quote, const engine::Graph& today);

}  // namespace flutebook::desk
