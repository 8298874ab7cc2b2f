// The plant that a command quotes with.
#pragma once

#include "host/command_line/run_context.hpp"
#include "host/workplace/workplace.hpp"

namespace flutebook::cli {

/// The plant opened for work, with its ledger to ask for a share of trim: no file of the ledger is opened before a
/// request asks. Throws as workplace::open().
[[nodiscard]] workplace::Workplace open_workplace(const RunContext& context);

}  // namespace flutebook::cli
