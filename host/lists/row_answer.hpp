// The answers of a batch of rows: each is read as a request, the requests are costed together, and so are they as of
// the day of their old price.
#pragma once

#include <span>

#include "host/lists/list_run.hpp"

namespace flutebook::lists {

/// Fills in all but the row itself. Any thread, each at a bench of its own.
void answer_rows(const workplace::Workplace& workplace, const ListColumns& columns, const ListOptions& options,
                 std::span<AnsweredRow> rows);

}  // namespace flutebook::lists
