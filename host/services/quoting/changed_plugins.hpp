// Which plugins are others today than when a quote was saved.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "host/answers/changed_plugin.hpp"
#include "host/engine/graph/graph.hpp"
#include "ledger/reading/quotes.hpp"

namespace flutebook::services {

/// In today's order of evaluation, then those that are gone. Throws LedgerError where a part of
/// the quote is not there, or cannot be read.
[[nodiscard]] std::vector<answers::ChangedPlugin> changed_plugins(const ledger::SavedQuote& quote,
                                                                  const engine::Graph& today);

}  // namespace flutebook::services
