// From what was posted to the run that the engine costs instead of the one it would lay out: section by section as the
// documents tell it, or as the quote allows.
#pragma once

#include "host/engine/engine.hpp"
#include "host/orders/order_record.hpp"
#include "host/production/order_actual.hpp"

namespace flutebook::services {

/// What all runs of one order are worked out from; refers to all of it. `row` is the order at the boxes that were made.
struct RunBasis {
    const engine::Graph& graph;
    const orders::OrderRecord& order;
    const production::OrderActual& actual;
    engine::Row row;
};

/// The converters as posted; the corrugator runs what it is allowed for the good sheets that were posted, in one run of
/// the order's own layout. Blanks that the parting step made and nothing was fed are its surplus. Throws ModelError
/// where the model that lays out the run sheds no such loss.
[[nodiscard]] engine::MeasuredRun converters_as_posted(const RunBasis& basis, const engine::Allowances& allowed);

/// The corrugator as posted too, each run with its own web. Paper is issued for the web that was run, and what is
/// stripped, left on the core or on the roll's end is what the corrugator that ran is allowed: rolls are not weighed by
/// order.
[[nodiscard]] engine::MeasuredRun all_as_posted(const RunBasis& basis);

}  // namespace flutebook::services
