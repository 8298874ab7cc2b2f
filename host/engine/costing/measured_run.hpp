// The host in the place of the model that lays out the run: writes what was measured where that model would write.
#pragma once

#include <optional>

#include "host/engine/costing/columns.hpp"
#include "host/engine/engine.hpp"
#include "host/engine/row.hpp"

namespace flutebook::engine {

/// Into the first row of the columns, in the units that the model declares; its lines stay silent. A fault where the
/// model provides a name that a measured run does not have.
[[nodiscard]] std::optional<Fault> write_measured_run(Columns& columns, const Slots& slots, const Graph& graph,
                                                      const MeasuredRun& run);

}  // namespace flutebook::engine
