// What the plant's files said when a quote was saved and say today, key by key.
#pragma once

#include <string>
#include <vector>

#include "host/plant/plant.hpp"
#include "host/services/quoting/differences.hpp"
#include "ledger/reading/quotes.hpp"

namespace flutebook::services {

struct ChangedKey {
    std::string file;       // "papers.yaml"
    Difference difference;  // a key that is there today has its place in today's file
};

/// File by file, in the order that the plant is read. Notes, order and spacing are no change. Throws LedgerError where
/// a part of the quote is not there, InputError (plant) where it is no file of a plant.
[[nodiscard]] std::vector<ChangedKey> changed_keys(const ledger::SavedQuote& quote, const plant::Plant& today);

}  // namespace flutebook::services
