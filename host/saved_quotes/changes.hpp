// What changed since a quote was saved: the plant's files key by key, the plugins, and what was answered for each
// quantity, figure by figure and line by line. Figures are compared by their keys: one that only a newer or an older
// document has is told, and makes no quote another.
//
// Trees of names and values are compared leaf by leaf, each leaf under its path: what stands in another order, or on
// another line, differs in nothing. Pure values; any thread.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "host/answers/changed_plugin.hpp"
#include "host/answers/quote_answer.hpp"
#include "host/answers/recheck_answer.hpp"
#include "host/base/yaml/node.hpp"
#include "host/engine/graph/graph.hpp"
#include "host/plant/plant.hpp"
#include "ledger/reading/quotes.hpp"

namespace flutebook::saved_quotes {

/// Two answers to the same request, every quantity of it in the same order. `now` may be null: today nothing is
/// answered. What --explain adds is a view of the same figures, and left out.
[[nodiscard]] std::vector<answers::ChangedQuantity> changed_quantities(const answers::RequestAnswer& was,
                                                                       const answers::RequestAnswer* now);

/// What the quantities of an answer came to, of a set each with its pieces behind it.
[[nodiscard]] std::vector<std::optional<answers::Total>> totals_of(const answers::RequestAnswer& answer);

/// File by file, in the order that the plant is read. Notes, order and spacing are no change. Throws LedgerError where
/// a part of the quote is not there, InputError (plant) where it is no file of a plant.
[[nodiscard]] std::vector<answers::ChangedKey> changed_keys(const ledger::SavedQuote& quote, const plant::Plant& today);

/// In today's order of evaluation, then those that are gone. Throws LedgerError where a part of
/// the quote is not there, or cannot be read.
[[nodiscard]] std::vector<answers::ChangedPlugin> changed_plugins(const ledger::SavedQuote& quote,
                                                                  const engine::Graph& today);

/// The leaves of a file, in its order. A list's entry is named by its only key (a model), by the day it counts from (a
/// price), else by its number from 1.
[[nodiscard]] std::vector<answers::Leaf> leaves_of(const base::Node& root);

/// In the order of `now`; what was taken out follows, in its own order. Values are compared as they were written.
[[nodiscard]] std::vector<answers::Difference> differences(const std::vector<answers::Leaf>& was,
                                                           const std::vector<answers::Leaf>& now);

}  // namespace flutebook::saved_quotes
