// Entries that stand, with what left the centre of each: read in one pass, month by month.
#pragma once

#include <functional>
#include <map>
#include <string>

#include "ledger/store/store.hpp"
#include "ledger/values/entry.hpp"

namespace flutebook::ledger {

struct StandingEntry {
    std::string order, board, content;
    std::map<std::string, Grams> left;  // its centre, by cause; empty: what was good
};

/// Calls `visit` with each entry of the month and of the kind that is neither reversed nor a reversal, and that moved
/// something out of its centre, in order of posting.
void visit_standing(const Store& store, Month month, const std::string& kind,
                    const std::function<void(const StandingEntry&)>& visit);

}  // namespace flutebook::ledger
