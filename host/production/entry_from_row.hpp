// What a row of a document is worth: the movements, and what was expected of them.
//
// Worked out once, when the row is posted, by the order's own layout and allowances; the ledger keeps it unchanged.
#pragma once

#include "host/plant/plant.hpp"
#include "host/production/book.hpp"
#include "host/production/row.hpp"
#include "host/production/row_validation.hpp"

namespace flutebook::production {

/// Of a row of any kind: an entry to post, or every reason why it cannot be.
[[nodiscard]] Worth entry_from_row(const DocumentRow& row, const plant::Plant& plant, Book& book);

}  // namespace flutebook::production
