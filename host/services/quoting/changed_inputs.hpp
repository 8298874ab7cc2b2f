// What the plant's files said when a quote was saved and say today, key by key.
#pragma once

#include <string>
#include <vector>

#include "host/answers/recheck_answer.hpp"
#include "host/plant/plant.hpp"
#include "host/services/quoting/differences.hpp"
#include "ledger/reading/quotes.hpp"

namespace flutebook::services {

/// File by file, in the order that the plant is read. Notes, order and spacing are no change. Throws LedgerError where
/// a part of the quote is not there, InputError (plant) where it is no file of a plant.
[[nodiscard]] std::vector<answers::ChangedKey> changed_keys(const ledger::SavedQuote& quote, const plant::Plant& today);

}  // namespace flutebook::services
