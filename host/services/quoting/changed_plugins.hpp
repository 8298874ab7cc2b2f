// Which plugins are others today than when a quote was saved.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "host/engine/graph/graph.hpp"
#include "ledger/reading/quotes.hpp"

namespace flutebook::services {

struct ChangedPlugin {
    struct File {
        std::string version, sha256;
        friend bool operator==(const File&, const File&) = default;
    };
    std::string id;
    std::optional<File> was, now;  // `was` alone: no longer loaded; `now` alone: loaded today
};

/// In today's order of evaluation, then those that are gone. Throws LedgerError where a part of
/// the quote is not there, or cannot be read.
[[nodiscard]] std::vector<ChangedPlugin> changed_plugins(const ledger::SavedQuote& quote, const engine::Graph& today);

}  // namespace flutebook::services
