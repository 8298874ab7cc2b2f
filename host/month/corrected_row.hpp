// A reversal, or a row that says why it is odd or late: what stands in a month besides its ordinary documents.
#pragma once

#include <cstdint>
#include <string>

#include "ledger/values/entry.hpp"

namespace flutebook::month {

struct CorrectedRow {
    std::int64_t entry;
    ledger::Date date;
    std::string kind, ref;  // of the document; of a reversal, of the one that it undoes
    bool is_reversal;
    ledger::Date undone_on;  // the day of what a reversal undoes
    std::string note;
};

}  // namespace flutebook::month
