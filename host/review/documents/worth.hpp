// What a row of a document is worth: the movements, and what was expected of them.
//
// Worked out once, when the row is posted, by the order's own layout and allowances; the ledger keeps it for ever.
#pragma once

#include "host/catalogue/plant.hpp"
#include "host/review/documents/book.hpp"
#include "host/review/documents/examination.hpp"
#include "host/review/documents/row.hpp"

namespace flutebook::review {

/// Of a row of any kind: an entry to post, or every reason why it cannot be.
[[nodiscard]] Worth worth(const Row& row, const catalogue::Plant& plant, Book& book);

}  // namespace flutebook::review
